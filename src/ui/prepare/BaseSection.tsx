import { IDENTITY_MATRIX3, type Matrix3, sameMatrix3 } from '../../core/colour/matrix3.ts'
import { mapTriple, type Triple } from '../../core/colour/triple.ts'
import { type FilmBase, PRINT_BASE, type ScanKind, sameBase } from '../../core/film/filmBase.ts'
import { setReel } from '../../core/job/commands/setReel.ts'
import type { Reel } from '../../core/job/job.ts'
import { perform } from '../../store/document.ts'
import { useApp, useAppState } from '../appContext.ts'
import { Choice } from '../parts/Choice.tsx'
import { NumberField } from '../parts/NumberField.tsx'
import { BaseList } from './BaseList.tsx'
import { BasePicture } from './BasePicture.tsx'
import { DensityReading } from './DensityReading.tsx'
import { DyePicking } from './DyePicking.tsx'

const SCANS: readonly { id: ScanKind; label: string }[] = [
  { id: 'print', label: 'a print, as it is to be seen' },
  { id: 'printing-density', label: 'printing density (10-bit, log)' },
  { id: 'negative', label: 'a negative' },
]

const CHANNELS = ['R', 'G', 'B'] as const

const FILM_ROWS = [
  { field: 'clear', name: 'clear film', low: -1, high: 4 },
  { field: 'gamma', name: 'film gamma', low: 0.1, high: 4 },
] as const

const withDye = (dyes: Matrix3, row: number, column: number, value: number): Matrix3 =>
  dyes.map((line, r) =>
    mapTriple(line, (old, c) => (r === row && c === column ? value : old)),
  ) as unknown as Matrix3

type RowProps = {
  readonly name: string
  readonly labels: readonly string[]
  readonly values: Triple
  readonly resets: Triple
  readonly low: number
  readonly high: number
  readonly owner: string
  readonly onChange: (column: 0 | 1 | 2, value: number, gesture: string | undefined) => void
}

const NumberRow = ({ name, labels, values, resets, onChange, ...rest }: RowProps) => (
  <tr>
    <th scope="row">{name}</th>
    {([0, 1, 2] as const).map((column) => (
      <td key={column}>
        <NumberField
          label={labels[column] ?? ''}
          value={values[column]}
          reset={resets[column]}
          step={0.01}
          decimals={3}
          onChange={(value, gesture) => onChange(column, value, gesture)}
          {...rest}
        />
      </td>
    ))}
  </tr>
)

const ChannelHeads = ({ corner }: { corner: string }) => (
  <thead>
    <tr>
      <td className="dim">{corner}</td>
      {CHANNELS.map((name) => (
        <th key={name} scope="col">
          {name}
        </th>
      ))}
    </tr>
  </thead>
)

/** The base of a reel: how its scan becomes video before any grade. */
export const BaseSection = ({ reel }: { reel: Reel }) => {
  const { store } = useApp()
  const hasPicture = useAppState((state) => state.media === 'ready')
  const { base, media } = reel
  const change = (
    label: string,
    edit: (before: FilmBase) => FilmBase,
    gesture?: string,
  ): boolean => {
    const editReel = (before: Reel): Reel => {
      const edited = edit(before.base)
      return sameBase(edited, before.base) ? before : { ...before, base: edited }
    }
    return perform(store, (job) => setReel(job, reel.id, editReel, label), gesture)
  }
  return (
    <section className="base-section" aria-label="Base">
      <h2>Base</h2>
      <p className="dim">What makes video of the scan, on the whole reel, before any grade.</p>
      {hasPicture && <BasePicture aspect={media.displayAspect} />}
      {hasPicture && <DensityReading />}
      {hasPicture && <DyePicking />}
      <Choice
        label="The scan is"
        options={SCANS}
        value={base.scan}
        onChange={(id) => change('Kind of scan', (b) => ({ ...b, scan: id as ScanKind }))}
      />
      {base.scan === 'printing-density' && (
        <p className="dim">
          Codes 95 and 685 of 1023 are black and white, 0.002 of density a code.
          {media.range === 'narrow' &&
            ' △ The range of codes is set to narrow; such files mostly have the full range.'}
        </p>
      )}
      {base.scan === 'negative' && (
        <>
          <table className="grade-table">
            <ChannelHeads corner="negative" />
            <tbody>
              {FILM_ROWS.map(({ field, name, low, high }) => (
                <NumberRow
                  key={field}
                  name={name}
                  labels={CHANNELS.map((channel) => `${name} ${channel}`)}
                  values={base[field]}
                  resets={PRINT_BASE[field]}
                  low={low}
                  high={high}
                  owner={reel.id}
                  onChange={(column, value, gesture) =>
                    change(
                      `${name} ${CHANNELS[column]}`,
                      (b) => ({
                        ...b,
                        [field]: mapTriple(b[field], (old, c) => (c === column ? value : old)),
                      }),
                      gesture,
                    )
                  }
                />
              ))}
            </tbody>
          </table>
          <p className="dim">
            Clear film: the density that the scan has where the negative is unexposed, its mask and
            fog; it becomes black. Film gamma: density for ten times the exposure.
          </p>
        </>
      )}
      <h3>Dye restoration</h3>
      <table className="grade-table">
        <ChannelHeads corner="restored density" />
        <tbody>
          {base.dyes.map((line, row) => (
            <NumberRow
              key={CHANNELS[row]}
              name={`${CHANNELS[row]} is`}
              labels={CHANNELS.map((channel) => `restored ${CHANNELS[row]} from ${channel}`)}
              values={line}
              resets={IDENTITY_MATRIX3[row as 0 | 1 | 2]}
              low={-4}
              high={4}
              owner={reel.id}
              onChange={(column, value, gesture) =>
                change(
                  'Dye restoration',
                  (b) => ({ ...b, dyes: withDye(b.dyes, row, column, value) }),
                  gesture,
                )
              }
            />
          ))}
        </tbody>
      </table>
      <p className="dim">
        Each row makes one restored density: so much of the scanned R, plus of G, plus of B. A faded
        dye wants more than 1 where row and column meet; below 0 elsewhere takes out another dye’s
        share. Equal sums of the rows keep greys grey.
      </p>
      <p>△ A dye restoration is an estimate: what the film looked like is not in the scan.</p>
      <button
        type="button"
        className="button"
        disabled={sameMatrix3(base.dyes, IDENTITY_MATRIX3)}
        onClick={() => change('No dye restoration', (b) => ({ ...b, dyes: IDENTITY_MATRIX3 }))}
      >
        No dye restoration
      </button>
      <BaseList
        list={base.list}
        onTakeOut={() => change('No base list', (b) => ({ ...b, list: null }))}
      />
    </section>
  )
}
