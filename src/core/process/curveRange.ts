import { at } from '../base/assert.ts'
import type { CurveStep } from './processList.ts'

/** Places of a block whose lowest and highest value are known beforehand. */
const BLOCK = 64

/** The lowest and the highest value of a channel's places `first` to `last`; none: no limits. */
export type CurveRange = (first: number, last: number) => readonly [low: number, high: number]

/** Quick for long stretches too: a curve may have 65,536 places, and be asked for every colour. */
export const createCurveRange = (
  { channels, points, values }: CurveStep,
  channel: number,
): CurveRange => {
  const valueAt = (place: number): number =>
    at(values, place * channels + (channels === 1 ? 0 : channel))
  const blocks = Math.ceil(points / BLOCK)
  const lows = new Float64Array(blocks).fill(Number.POSITIVE_INFINITY)
  const highs = new Float64Array(blocks).fill(Number.NEGATIVE_INFINITY)
  for (let place = 0; place < points; place++) {
    const block = Math.floor(place / BLOCK)
    lows[block] = Math.min(at(lows, block), valueAt(place))
    highs[block] = Math.max(at(highs, block), valueAt(place))
  }
  return (first, last) => {
    let low = Number.POSITIVE_INFINITY
    let high = Number.NEGATIVE_INFINITY
    let place = first
    while (place <= last) {
      const block = Math.floor(place / BLOCK)
      const isWhole = place % BLOCK === 0 && place + BLOCK - 1 <= last
      low = Math.min(low, isWhole ? at(lows, block) : valueAt(place))
      high = Math.max(high, isWhole ? at(highs, block) : valueAt(place))
      place += isWhole ? BLOCK : 1
    }
    return [low, high]
  }
}
