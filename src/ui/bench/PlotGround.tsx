import type { scaleLinear } from 'd3-scale'
import { memo } from 'react'
import type { Grade } from '../../core/colour/grade.ts'
import type { GradeColumn } from '../../core/colour/gradeColumns.ts'
import { transferLevel } from '../../core/colour/transferHandles.ts'
import { reelLevels } from '../../store/looks.ts'
import { useAppState } from '../appContext.ts'

/** The levels the plot shows, both ways. */
export const PLOT_LOW = -0.08
export const PLOT_HIGH = 1.12

/** Room for the numbers at the left and the foot. */
export const PLOT_LEFT = 26
export const PLOT_BOTTOM = 16

const STEPS = 48

export type Scale = ReturnType<typeof scaleLinear<number, number>>

const TICKS = [0, 0.5, 1]

type AxesProps = { readonly x: Scale; readonly y: Scale; readonly height: number }

export const PlotAxes = memo(({ x, y, height }: AxesProps) => (
  <g className="plot-axes">
    {TICKS.map((level) => (
      <g key={level}>
        <path
          d={`M${x(PLOT_LOW)} ${y(level)}H${x(PLOT_HIGH)}M${x(level)} ${y(PLOT_LOW)}V${y(PLOT_HIGH)}`}
        />
        <text x={PLOT_LEFT - 4} y={y(level)} className="at-left">
          {level * 100}
        </text>
        <text x={x(level)} y={height - 4} className="at-foot">
          {level * 100}
        </text>
      </g>
    ))}
    <path className="diagonal" d={`M${x(0)} ${y(0)}L${x(1)} ${y(1)}`} />
    <text x={x(PLOT_HIGH) - 3} y={height - PLOT_BOTTOM - 5} className="at-end">
      scanned %
    </text>
    <text x={PLOT_LEFT + 8} y={y(1) + 12}>
      graded %
    </text>
  </g>
))

type ZonesProps = {
  readonly limits: readonly [low: number, high: number]
  readonly x: Scale
  readonly y: Scale
}

/** Where what comes out would be outside the tolerance, hatched. */
export const OutsideZones = memo(({ limits: [low, high], x, y }: ZonesProps) => {
  const width = x(PLOT_HIGH) - x(PLOT_LOW)
  const over = Math.max(0, y(Math.max(PLOT_LOW, Math.min(PLOT_HIGH, high))) - y(PLOT_HIGH))
  const under = Math.max(0, y(PLOT_LOW) - y(Math.max(PLOT_LOW, Math.min(PLOT_HIGH, low))))
  return (
    <g>
      <defs>
        <pattern id="outside-hatch" width="6" height="6" patternUnits="userSpaceOnUse">
          <path d="M0 6L6 0" className="plot-hatch" />
        </pattern>
      </defs>
      <rect className="plot-outside" x={x(PLOT_LOW)} y={y(PLOT_HIGH)} width={width} height={over} />
      <rect
        className="plot-outside"
        x={x(PLOT_LOW)}
        y={y(PLOT_LOW) - under}
        width={width}
        height={under}
      />
    </g>
  )
})

type LevelsProps = {
  readonly x: Scale
  readonly column: GradeColumn
  readonly bottom: number
}

/** How the reel's levels are spread, as scanned, behind the curves. */
export const ReelLevels = memo(({ x, column, bottom }: LevelsProps) => {
  const known = useAppState(reelLevels)
  if (!known) return null
  const counts = known.levels[column === 'all' ? 3 : column]
  const most = counts.reduce((a, b) => Math.max(a, b), 0)
  if (most === 0) return null
  const step = (PLOT_HIGH - PLOT_LOW) / counts.length
  const tall = bottom * 0.6
  const points = [...counts].map(
    (count, i) =>
      `${x(PLOT_LOW + i * step).toFixed(1)} ${(bottom - tall * Math.sqrt(count / most)).toFixed(1)}H${x(PLOT_LOW + (i + 1) * step).toFixed(1)}`,
  )
  return (
    <path className="plot-levels" d={`M${x(PLOT_LOW)} ${bottom}L${points.join('L')}V${bottom}Z`}>
      <title>{`levels of the reel as scanned, ${known.cues} of ${known.of} cues`}</title>
    </path>
  )
})

const curve = (grade: Grade, column: GradeColumn, x: Scale, y: Scale): string =>
  Array.from({ length: STEPS + 1 }, (_, i) => {
    const level = PLOT_LOW + (i * (PLOT_HIGH - PLOT_LOW)) / STEPS
    const out = Math.min(
      PLOT_HIGH + 0.1,
      Math.max(PLOT_LOW - 0.1, transferLevel(grade, column, level)),
    )
    return `${i === 0 ? 'M' : 'L'}${x(level).toFixed(1)} ${y(out).toFixed(1)}`
  }).join('')

const CHANNELS = [
  { column: 0, name: 'r' },
  { column: 1, name: 'g' },
  { column: 2, name: 'b' },
] as const

export const Curves = ({
  grade,
  column,
  x,
  y,
}: {
  grade: Grade
  column: GradeColumn
  x: Scale
  y: Scale
}) => (
  <g className="plot-curves">
    <clipPath id="plot-clip">
      <rect
        x={x(PLOT_LOW)}
        y={y(PLOT_HIGH)}
        width={x(PLOT_HIGH) - x(PLOT_LOW)}
        height={y(PLOT_LOW) - y(PLOT_HIGH)}
      />
    </clipPath>
    <g clipPath="url(#plot-clip)">
      {CHANNELS.map((channel) => (
        <path
          key={channel.name}
          className={`curve ${channel.name}${column === channel.column ? ' is-held' : ''}`}
          d={curve(grade, channel.column, x, y)}
        />
      ))}
      {column === 'all' && <path className="curve all" d={curve(grade, 'all', x, y)} />}
    </g>
  </g>
)
