import type { MachineSeries } from './machineLog.ts'

/** How something on a machine goes up or down with time. */
export type Drift = {
  /** Change over the time that was looked at, in its unit. */
  readonly change: number
  readonly days: number
  /** Days until it passes a limit, if it goes on so; undefined where it does not within a year. */
  readonly daysLeft: number | undefined
}

const DAY = 86_400_000
const YEAR = 365

/** Days that are looked back: what was before is another story. */
const RECENT = 92

/** Line-ups that a drift is told from, and days they span, at least. */
const LEAST_POINTS = 4
const LEAST_DAYS = 3

/** It is told where the line through it rises so many times its own standard error. */
const SURE = 3

/** And by at least this part of the room between its limits, or of its size where it has none. */
const LEAST_PART = 0.1
const LEAST_SHARE = 0.01

const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length

const line = (x: readonly number[], y: readonly number[]) => {
  const [mx, my] = [mean(x), mean(y)]
  const sxx = x.reduce((sum, at) => sum + (at - mx) ** 2, 0)
  const slope = x.reduce((sum, at, i) => sum + (at - mx) * ((y[i] ?? 0) - my), 0) / sxx
  const left = x.reduce((sum, at, i) => sum + ((y[i] ?? 0) - my - slope * (at - mx)) ** 2, 0)
  return {
    slope,
    now: my + slope * ((x.at(-1) ?? mx) - mx),
    error: Math.sqrt(left / (x.length - 2) / sxx),
  }
}

const daysUntil = (
  now: number,
  slope: number,
  { low, high }: NonNullable<MachineSeries['limits']>,
): number | undefined => {
  const days = ((slope > 0 ? high : low) - now) / slope
  return days <= YEAR ? Math.max(0, days) : undefined
}

/**
 * A straight line through the values of the last three months, where it tells something: its slope
 * is three times its standard error or more, and the change is worth telling. Undefined otherwise.
 */
export const driftOf = ({ points, limits }: MachineSeries): Drift | undefined => {
  const all = points.map(({ at, value }) => ({ day: Date.parse(at) / DAY, value }))
  const end = all.at(-1)?.day ?? 0
  const recent = all.filter(({ day }) => day >= end - RECENT)
  const x = recent.map(({ day }) => day)
  const days = (x.at(-1) ?? 0) - (x[0] ?? 0)
  if (recent.length < LEAST_POINTS || !(days >= LEAST_DAYS)) return undefined
  const y = recent.map(({ value }) => value)
  const { slope, now, error } = line(x, y)
  const change = slope * days
  const least = limits ? LEAST_PART * (limits.high - limits.low) : LEAST_SHARE * Math.abs(mean(y))
  if (Math.abs(slope) < SURE * error || Math.abs(change) < least) return undefined
  return { change, days, daysLeft: limits && daysUntil(now, slope, limits) }
}
