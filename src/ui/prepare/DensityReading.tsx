import { useSyncExternalStore } from 'react'
import { baseDensities, PRINT_BASE } from '../../core/film/filmBase.ts'
import { windowColour } from '../../core/picture/windowColour.ts'
import { shownBase } from '../../store/proposal.ts'
import { reelOf } from '../../store/queries.ts'
import { useApp, useAppState } from '../appContext.ts'
import { formatNumber } from '../parts/numberText.ts'

const CHANNELS = ['R', 'G', 'B'] as const

/** A place is read as the mean of so many pixels across and down: grain is not density. */
const WINDOW = 5

/** The densities of the place under the pointer, as scanned and as the base restores them. */
export const DensityReading = () => {
  const { store, services } = useApp()
  const over = useAppState(({ pointing }) => pointing.over)
  const reel = useAppState(reelOf)
  useAppState(({ proposal }) => proposal)
  const shown = useSyncExternalStore(services.frames.subscribe, services.frames.current)
  if (!reel) return null
  const base = shownBase(store.getState(), reel)
  const colour =
    shown &&
    over &&
    windowColour(shown.planes, { ...shown.coding, base: PRINT_BASE }, over.x, over.y, WINDOW)
  const densities = colour && baseDensities(colour, base)
  const rows = [
    { name: 'as scanned', of: densities?.scanned },
    { name: 'restored', of: densities?.restored },
  ]
  return (
    <table className="limits density-reading">
      <thead>
        <tr>
          <th scope="col" title="over clear film of a negative, over peak white of a print">
            density at the pointer
          </th>
          {CHANNELS.map((name) => (
            <th key={name} scope="col">
              {name}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {rows.map(({ name, of }) => (
          <tr key={name}>
            <th scope="row">{name}</th>
            {CHANNELS.map((channel, c) => (
              <td key={channel}>{of ? formatNumber(of[c] ?? 0, 3) : '–'}</td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  )
}
