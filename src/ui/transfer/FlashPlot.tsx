import { useMemo } from 'react'
import type { FlashReport } from '../../core/flashes/flashReport.ts'
import { FLASH_NAMES } from '../../core/flashes/flashWords.ts'
import type { Cue, Reel } from '../../core/job/job.ts'
import type { Frame } from '../../core/time/frame.ts'
import { FLASH_SIGNS } from '../parts/flashSigns.ts'
import { STRINGS } from '../strings.ts'
import { FlashTable } from './FlashTable.tsx'
import {
  AREA_BAND,
  COUNT_BAND,
  type FlashScales,
  flashScales,
  MARKED,
  NAME_LINES,
  PLOT,
  stepPath,
} from './flashPlotShapes.ts'

export type FlashPlotProps = {
  readonly report: FlashReport
  /** The cues of the reel, in order: those within the report are marked. */
  readonly cues: readonly Cue[]
  readonly reel: Pick<Reel, 'rate' | 'startCount' | 'isDropFrame'>
  readonly onGoTo: (frame: Frame) => void
}

/** A report's series with its breaches, and a table of them to go to their frames from. */
export const FlashPlot = ({ report, cues, reel, onGoTo }: FlashPlotProps) => {
  const scales = useMemo(() => flashScales(report), [report])
  return (
    <section className="flash-plot" aria-label={STRINGS.flashes.plot}>
      <svg viewBox={`0 0 ${PLOT.width} ${PLOT.height}`} role="img">
        <title>{STRINGS.flashes.plotTitle(report.breaches.length)}</title>
        <Grid scales={scales} />
        <Series report={report} scales={scales} />
        <CueStarts report={report} cues={cues} scales={scales} />
        <Breaches report={report} scales={scales} />
      </svg>
      <p className="dim">{STRINGS.flashes.plotKey}</p>
      <FlashTable report={report} cues={cues} reel={reel} onGoTo={onGoTo} />
      <p className="flash-caution">{report.caution}</p>
    </section>
  )
}

const Grid = ({ scales: { area, count } }: { readonly scales: FlashScales }) => (
  <g className="flash-grid">
    <path d={`M${PLOT.left} ${area(0)}H${PLOT.right}M${PLOT.left} ${count(0)}H${PLOT.right}`} />
    <path
      className="flash-limit"
      d={[area(MARKED.area), area(-MARKED.area), count(MARKED.count)]
        .map((y) => `M${PLOT.left} ${y}H${PLOT.right}`)
        .join('')}
    />
    <text x={PLOT.left - 4} y={area(MARKED.area)}>
      25 %
    </text>
    <text x={PLOT.left - 4} y={area(-MARKED.area)}>
      25 %
    </text>
    <text x={PLOT.left - 4} y={count(MARKED.count)}>
      {MARKED.count}
    </text>
  </g>
)

type Drawn = { readonly report: FlashReport; readonly scales: FlashScales }

const Series = ({ report: { series, first }, scales }: Drawn) => {
  const { x, area, count } = scales
  const ofArea = { x, y: area }
  const ofCount = { x, y: count }
  return (
    <g className="flash-series">
      <path className="filled" d={stepPath(series.up, first, ofArea)} />
      <path className="filled" d={stepPath(series.down, first, ofArea, -1)} />
      <path className="filled" d={stepPath(series.changes, first, ofCount)} />
      <path className="dotted" d={stepPath(series.redUp, first, ofArea)} />
      <path className="dotted" d={stepPath(series.redDown, first, ofArea, -1)} />
      <path className="dotted" d={stepPath(series.redChanges, first, ofCount)} />
    </g>
  )
}

const CueStarts = ({ report, cues, scales: { x } }: Drawn & Pick<FlashPlotProps, 'cues'>) => (
  <path
    className="flash-cues"
    d={cues
      .filter(({ first }) => first > report.first && first < report.first + report.frames)
      .map(({ first }) => `M${x(first)} ${AREA_BAND.top}V${COUNT_BAND.bottom + 6}`)
      .join('')}
  />
)

const Breaches = ({ report: { breaches }, scales: { x } }: Drawn) => (
  <g className="flash-breaches">
    {breaches.map(({ kind, first, last }) => (
      <g key={`${kind} ${first}`}>
        <path d={`M${x(first)} ${NAME_LINES[kind] + 3}v-3v3H${x(last + 1)}v-3`} />
        <text x={x(first)} y={NAME_LINES[kind] - 1}>
          {FLASH_SIGNS[kind]} {FLASH_NAMES[kind]}
        </text>
      </g>
    ))}
  </g>
)
