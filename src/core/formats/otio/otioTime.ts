import {
  type JsonNode,
  jsonRecord,
  jsonString,
  memberOf,
  numberOf,
} from '../../base/json/jsonNode.ts'
import { jsonNumber } from '../../base/json/plainJson.ts'
import { framesPerSecond, type Rate, sameRate, snapRate } from '../../time/rate.ts'
import { isOf } from './otioSchema.ts'

/** A RationalTime.1: `value` units of which `rate` make a second. */
export type OtioTime = { readonly value: number; readonly rate: number }

/** A TimeRange.1. */
export type OtioRange = { readonly start: OtioTime; readonly duration: OtioTime }

/** A time; undefined where it is none, or not finite, or its rate is not above 0. */
export const readTime = (node: JsonNode | undefined): OtioTime | undefined => {
  if (!isOf(node, 'RationalTime')) return undefined
  const value = numberOf(memberOf(node, 'value'))
  const rate = numberOf(memberOf(node, 'rate'))
  if (value === undefined || rate === undefined) return undefined
  if (!Number.isFinite(value) || !Number.isFinite(rate) || rate <= 0) return undefined
  return { value, rate }
}

/** A range; undefined where it is none, or it lasts less than nothing. */
export const readRange = (node: JsonNode | undefined): OtioRange | undefined => {
  if (!isOf(node, 'TimeRange')) return undefined
  const start = readTime(memberOf(node, 'start_time'))
  const duration = readTime(memberOf(node, 'duration'))
  return start && duration && duration.value >= 0 ? { start, duration } : undefined
}

/** Units a second as the fraction they stand for, where they stand for one: 29.97 → 30000/1001. */
const secondUnits = (rate: number): number => {
  const snapped = framesPerSecond(snapRate(rate))
  return Math.abs(snapped - rate) <= 2e-4 * rate ? snapped : rate
}

/** A time in frames of a rate; not always whole. */
export const timeInFrames = ({ value, rate }: OtioTime, frameRate: Rate): number =>
  sameRate(snapRate(rate), frameRate)
    ? value
    : (value * framesPerSecond(frameRate)) / secondUnits(rate)

/** Times are doubles and some are sums of seconds: this near to a frame, it is that frame. */
const NEAR = 1e-6

/** The whole number of frames this is; undefined where it lies between two or is past counting. */
export const wholeFrames = (frames: number | undefined): number | undefined => {
  if (frames === undefined) return undefined
  const whole = Math.round(frames)
  return Number.isSafeInteger(whole) && Math.abs(frames - whole) <= NEAR ? whole + 0 : undefined
}

const SLOWEST = 10
const FASTEST = 240

/**
 * The rate that a list's times are counted at: that of its first range, where frames are counted
 * at all. A list in seconds or samples is counted at the rate of the reel it is read for, if known.
 */
export const listRate = (rate: number, reelRate: Rate | undefined): Rate =>
  reelRate !== undefined && (rate < SLOWEST || rate > FASTEST) ? reelRate : snapRate(rate)

/** A time as a RationalTime.1. */
export const timeNode = (value: number, rate: Rate): JsonNode =>
  jsonRecord([
    ['OTIO_SCHEMA', jsonString('RationalTime.1')],
    ['rate', jsonNumber(framesPerSecond(rate))],
    ['value', jsonNumber(value)],
  ])

/** Frames from `start` as a TimeRange.1. */
export const rangeNode = (start: number, frames: number, rate: Rate): JsonNode =>
  jsonRecord([
    ['OTIO_SCHEMA', jsonString('TimeRange.1')],
    ['start_time', timeNode(start, rate)],
    ['duration', timeNode(frames, rate)],
  ])
