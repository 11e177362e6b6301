import type { ReactNode } from 'react'
import type { Limits, ToleranceProfile } from '../../core/tolerance/profile.ts'
import { formatNumber } from '../parts/numberText.ts'

export type Figure = 'rgb' | 'luma' | 'composite'

export const FIGURES: readonly { readonly id: Figure; readonly name: string }[] = [
  { id: 'rgb', name: 'R′ G′ B′' },
  { id: 'luma', name: 'Y′' },
  { id: 'composite', name: 'luma plus chroma' },
]

const asCodes = (limits: Limits): string =>
  limits.map((level) => formatNumber(64 + 876 * level, 0)).join('…')

type LimitsTableProps = {
  readonly profile: ToleranceProfile
  /** What stands in place of a limit, and of a figure's name, where they can be changed. */
  readonly limitCell?: (figure: Figure, limits: Limits, end: 0 | 1) => ReactNode
  readonly nameCell?: (figure: Figure, name: string) => ReactNode
}

/** The limits of a profile, a row each for what is limited, in percent and 10-bit codes. */
export const LimitsTable = ({ profile, limitCell, nameCell }: LimitsTableProps) => (
  <table className="limits">
    <thead>
      <tr>
        <th scope="col">limits</th>
        <th scope="col">lowest</th>
        <th scope="col">highest</th>
        <th scope="col">10-bit codes</th>
      </tr>
    </thead>
    <tbody>
      {FIGURES.map(({ id, name }) => {
        const limits = profile[id]
        return (
          <tr key={id}>
            <th scope="row">{nameCell?.(id, name) ?? name}</th>
            {limits ? (
              ([0, 1] as const).map((end) => (
                <td key={end}>
                  {limitCell?.(id, limits, end) ?? `${formatNumber(limits[end] * 100, 2)} %`}
                </td>
              ))
            ) : (
              <td colSpan={2} className="dim">
                not limited
              </td>
            )}
            <td className="dim">{limits && id !== 'composite' ? asCodes(limits) : '–'}</td>
          </tr>
        )
      })}
    </tbody>
  </table>
)
