import type { Drift } from './drift.ts'
import type { MachineSeries } from './machineLog.ts'

const NUMBERS = [
  'no',
  'one',
  'two',
  'three',
  'four',
  'five',
  'six',
  'seven',
  'eight',
  'nine',
  'ten',
]

const counted = (count: number, one: string): string =>
  `${NUMBERS[count] ?? count} ${one}${count === 1 ? '' : 's'}`

/** So many days in words: days up to two weeks, then weeks, then months. */
export const spanWords = (days: number): string => {
  if (days < 14) return counted(Math.round(days), 'day')
  return days < 70
    ? counted(Math.round(days / 7), 'week')
    : counted(Math.round(days / 30.4), 'month')
}

const amount = (value: number, unit: string): string =>
  `${Number(Math.abs(value).toPrecision(2))}${unit === '' ? '' : ` ${unit}`}`

/** Whether a change is told as a part of the value: of what is far from 0 and no part itself. */
const isToldAsPart = ({ points, unit }: MachineSeries, change: number): boolean => {
  const first = points[0]?.value ?? 0
  return unit !== '%' && Math.abs(first) > 4 * Math.abs(change)
}

/** A drift as a person says it: “Red gain has crept up 3 % in six weeks.” */
export const driftWords = (series: MachineSeries, { change, days, daysLeft }: Drift): string => {
  const first = series.points[0]?.value ?? 0
  const by = isToldAsPart(series, change)
    ? amount((100 * change) / first, '%')
    : amount(change, series.unit)
  const crept = `${series.name} has crept ${change > 0 ? 'up' : 'down'} ${by} in ${spanWords(days)}`
  if (daysLeft === undefined) return `${crept}.`
  return daysLeft === 0
    ? `${crept}, and is past its limit.`
    : `${crept}; at this rate it passes its limit in ${spanWords(Math.max(1, daysLeft))}.`
}
