import { type Adjustment, readingsOutside } from './adjustment.ts'
import { withUnit } from './withUnit.ts'

/** How a line-up ended, in words for its log: controls, readings, and those outside their limits. */
export const lineUpWords = (
  { controls, readings, log }: Adjustment,
  title: string,
  reason: string,
  cleaned: readonly string[] = [],
): string => {
  const last = log.at(-1)
  if (!last) return ''
  const outside = new Set(readingsOutside(readings, last.values))
  const set = controls.map(
    ({ name, unit }, j) => `${name} ${withUnit(last.settings[j] ?? 0, unit)}`,
  )
  const read = readings.map(
    ({ name, unit, low, high }, i) =>
      `${name} ${withUnit(last.values[i] ?? 0, unit)}${outside.has(i) ? ` (outside ${withUnit(low, unit)} to ${withUnit(high, unit)})` : ''}`,
  )
  const parts = [`${title}. Set: ${set.join(', ')}.`, `Read: ${read.join(', ')}.`]
  if (cleaned.length > 0) parts.push(`Cleaned: ${cleaned.join(', ')}.`)
  if (outside.size > 0) parts.push(`Left outside its limits because: ${reason.trim()}`)
  return parts.join(' ')
}
