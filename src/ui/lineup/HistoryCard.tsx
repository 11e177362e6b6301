import { useMemo } from 'react'
import { driftOf } from '../../core/lineup/drift.ts'
import { driftWords } from '../../core/lineup/driftWords.ts'
import {
  entriesOf,
  lastGood,
  type MachineSeries,
  machinesOf,
  seriesOf,
} from '../../core/lineup/machineLog.ts'
import { withUnit } from '../../core/lineup/withUnit.ts'
import { GAUGE_WORDS } from '../../core/time/gaugeWords.ts'
import { recallSettings } from '../../store/liningUp.ts'
import { setMachineHistory } from '../../store/machineHistory.ts'
import { reelOf } from '../../store/queries.ts'
import { useApp, useAppState } from '../appContext.ts'
import { Choice } from '../parts/Choice.tsx'
import { TextField } from '../parts/TextField.tsx'
import { SERIES, seriesShapes } from './seriesShapes.ts'

/** How this machine stood at earlier line-ups with the reel's gauge, and where it is going. */
export const HistoryCard = () => {
  const { store, services } = useApp()
  const { log, machine } = useAppState(({ machineHistory }) => machineHistory)
  const gauge = useAppState((state) => reelOf(state)?.gauge)
  const entries = useMemo(
    () => (gauge ? entriesOf(log, machine, gauge) : []),
    [log, machine, gauge],
  )
  const series = useMemo(() => seriesOf(entries), [entries])
  const known = machinesOf(log)
  const good = lastGood(entries)
  const choose = (name: string): boolean => {
    setMachineHistory(store, { machine: name.trim() })
    return true
  }
  return (
    <section aria-label="History">
      <h2>History of the machine</h2>
      <TextField label="Machine, by the name you give it" value={machine} onCommit={choose} />
      {known.length > 1 && (
        <Choice
          label="Machines known here"
          options={[
            ...(known.includes(machine) ? [] : [{ id: machine, label: 'none of these' }]),
            ...known.map((id) => ({ id, label: id })),
          ]}
          value={machine}
          onChange={choose}
        />
      )}
      <p className="dim">
        {machine === ''
          ? 'Without a name a line-up is logged for the reel alone.'
          : entries.length === 0
            ? `No line-up of it with ${gauge ? GAUGE_WORDS[gauge] : 'this gauge'} is kept here yet.`
            : `${entries.length === 1 ? '1 line-up' : `${entries.length} line-ups`} with ${gauge ? GAUGE_WORDS[gauge] : ''}, ${entries[0]?.at.slice(0, 10)} to ${entries.at(-1)?.at.slice(0, 10)}.`}
      </p>
      <Drifts series={series} />
      {series.map((each) => (
        <SeriesPlot key={`${each.isReading} ${each.name}`} series={each} />
      ))}
      <div className="button-row">
        <button
          type="button"
          className="button"
          disabled={!good}
          onClick={() => good && recallSettings(store, good.controls)}
        >
          Recall the last good set
        </button>
        <button type="button" className="button" onClick={() => void services.machines.save()}>
          Save the history…
        </button>
        <button type="button" className="button" onClick={() => void services.machines.open()}>
          Open a history…
        </button>
      </div>
    </section>
  )
}

const Drifts = ({ series }: { readonly series: readonly MachineSeries[] }) => {
  const told = series.flatMap((each) => {
    const drift = driftOf(each)
    return drift ? [driftWords(each, drift)] : []
  })
  if (told.length === 0) return null
  return (
    <ul>
      {told.map((words) => (
        <li key={words}>{words}</li>
      ))}
    </ul>
  )
}

const SeriesPlot = ({ series }: { readonly series: MachineSeries }) => {
  const { path, dots, limits } = useMemo(() => seriesShapes(series), [series])
  const last = series.points.at(-1)
  const says = `${series.name}: ${last ? withUnit(last.value, series.unit) : ''}`
  return (
    <figure className="series">
      <svg viewBox={`0 0 ${SERIES.width} ${SERIES.height}`} role="img" aria-label={says}>
        {limits.map((y) => (
          <path key={y} className="limit" d={`M0 ${y}H${SERIES.width}`} />
        ))}
        <path className="line" d={path} />
        {dots.map(({ x, y, isOutside }) =>
          isOutside ? (
            <path key={`${x} ${y}`} className="dot" d={`M${x - 4} ${y + 3}h8L${x} ${y - 4}Z`} />
          ) : (
            <circle key={`${x} ${y}`} className="dot" cx={x} cy={y} r={2} />
          ),
        )}
      </svg>
      <figcaption>{says}</figcaption>
    </figure>
  )
}
