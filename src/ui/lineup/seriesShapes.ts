import type { MachineSeries } from '../../core/lineup/machineLog.ts'

/** The drawing of a reading over time, in its own units. */
export const SERIES = { width: 260, height: 46, edge: 4 } as const

export type SeriesShapes = {
  readonly path: string
  readonly dots: readonly { readonly x: number; readonly y: number; readonly isOutside: boolean }[]
  /** Heights of its limits; none for a control. */
  readonly limits: readonly number[]
}

/** A reading over time with its limits, as lines and dots. */
export const seriesShapes = ({ points, limits }: MachineSeries): SeriesShapes => {
  const times = points.map(({ at }) => Date.parse(at))
  const bounds = limits ? [limits.low, limits.high] : []
  const values = [...points.map(({ value }) => value), ...bounds]
  const [low, high] = [Math.min(...values), Math.max(...values)]
  const [first = 0, last = 0] = [times[0], times.at(-1)]
  const { width, height, edge } = SERIES
  const x = (time: number) =>
    last === first ? width / 2 : edge + ((width - 2 * edge) * (time - first)) / (last - first)
  const y = (value: number) =>
    high === low ? height / 2 : height - edge - ((height - 2 * edge) * (value - low)) / (high - low)
  const dots = points.map(({ value }, i) => ({
    ...{ x: x(times[i] ?? 0), y: y(value) },
    isOutside: limits !== undefined && (value < limits.low || value > limits.high),
  }))
  return {
    path: dots.map((dot, i) => `${i === 0 ? 'M' : 'L'}${dot.x} ${dot.y}`).join(''),
    dots,
    limits: bounds.map(y),
  }
}
