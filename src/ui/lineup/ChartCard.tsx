import { useState } from 'react'
import {
  CHART_KINDS,
  type ChartKind,
  type Measured,
  measuredText,
  REGIONS_OF,
} from '../../core/chart/measureChart.ts'
import { chooseKind, setCharting } from '../../store/charting.ts'
import { sayIsRead } from '../../store/liningUp.ts'
import { useApp, useAppState } from '../appContext.ts'
import { Choice } from '../parts/Choice.tsx'
import { TextField } from '../parts/TextField.tsx'
import { ChartPicture } from './ChartPicture.tsx'

const KIND_WORDS: Readonly<Record<ChartKind, { readonly title: string; readonly how: string }>> = {
  levels: { title: 'levels of an even patch', how: 'Mark out an even patch, as of an open gate.' },
  edge: {
    title: 'response by a leaning edge',
    how: 'Mark out a straight edge that leans by about 5°, with as much on either side.',
  },
  lines: { title: 'fine lines', how: 'Mark out lines of one closeness.' },
  geometry: {
    title: 'geometry by four marks',
    how: 'Mark out four marks that are the corners of a rectangle on the chart, each closely.',
  },
  streak: {
    title: 'streak behind white',
    how: 'Mark out an edge from white to black, white on the left, with all of the streak.',
  },
}

const KINDS = CHART_KINDS.map((id) => ({ id, label: KIND_WORDS[id].title }))

/** Readings from a picture of a chart, or from a captured line profile. */
export const ChartCard = () => {
  const { store, services } = useApp()
  const { name, picture, kind, regions, correctors, measured } = useAppState(
    ({ charting }) => charting,
  )
  const left = picture ? REGIONS_OF[kind] - regions.length : 0
  return (
    <section aria-label="Chart" className="chart-card">
      <h2>Measure a chart</h2>
      <p className="dim">
        A picture of a test chart (PNG, TIFF, DPX), or levels along a line (CSV: place and level, or
        place, red, green, blue).
      </p>
      <div className="button-row">
        <button type="button" className="button" onClick={() => void services.chart.open()}>
          Open a picture or profile…
        </button>
        <span className="dim">{name}</span>
      </div>
      {name !== undefined && (
        <>
          {picture && (
            <>
              <Choice
                label="What is measured"
                options={KINDS}
                value={kind}
                onChange={(id) => chooseKind(store, id as ChartKind)}
              />
              <p>{KIND_WORDS[kind].how}</p>
              <ChartPicture {...picture} regions={regions} />
            </>
          )}
          {kind === 'streak' && (
            <TextField
              label="Time constants of the machine’s correctors (those that are found where empty)"
              value={correctors}
              onCommit={(text) => {
                setCharting(store, { correctors: text, measured: [] })
                return true
              }}
            />
          )}
          <div className="button-row">
            <button
              type="button"
              className="button primary"
              disabled={left > 0}
              onClick={() => void services.chart.measure()}
            >
              Measure
            </button>
            {left > 0 && (
              <span className="dim">
                {left === 1 ? 'one region' : `${left} regions`} to mark out
              </span>
            )}
          </div>
          <MeasuredRows measured={measured} />
        </>
      )}
    </section>
  )
}

const MeasuredRows = ({ measured }: { readonly measured: readonly Measured[] }) => {
  const { store } = useApp()
  const readings = useAppState(({ liningUp }) => liningUp.adjustment.readings)
  const [taken, setTaken] = useState<ReadonlyMap<string, number>>(new Map())
  if (measured.length === 0) return null
  /** The reading a number is for: as chosen, or the one it is named like; −1: none. */
  const readingFor = (what: string): number =>
    taken.get(what) ?? readings.findIndex(({ name }) => name.startsWith(what))
  return (
    <table className="line-up-table">
      <tbody>
        {measured.map((each) => (
          <tr key={each.what}>
            <th scope="row">{each.what}</th>
            <td>{measuredText(each)}</td>
            <td>
              <select
                aria-label={`Reading that ${each.what} is for`}
                value={readingFor(each.what)}
                onChange={(event) =>
                  setTaken(new Map(taken).set(each.what, Number(event.currentTarget.value)))
                }
              >
                <option value={-1}>no reading</option>
                {readings.map(({ id, name }, at) => (
                  <option key={id} value={at}>
                    {name}
                  </option>
                ))}
              </select>
            </td>
            <td>
              <button
                type="button"
                className="button"
                aria-label={`Take ${each.what} as the reading`}
                disabled={readingFor(each.what) < 0}
                onClick={() =>
                  sayIsRead(store, readingFor(each.what), Number(each.value.toFixed(each.decimals)))
                }
              >
                take
              </button>
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  )
}
