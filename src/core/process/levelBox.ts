import { at } from '../base/assert.ts'
import type { Triple } from '../colour/triple.ts'

/** Low and high of R′, G′, B′. */
export type LevelBox = { readonly low: Triple; readonly high: Triple }

/** The lowest and the highest of every `step`th value from `first` on. */
export const valuesRange = (
  values: readonly number[],
  step: number,
  first: number,
): readonly [low: number, high: number] => {
  let low = Number.POSITIVE_INFINITY
  let high = Number.NEGATIVE_INFINITY
  for (let i = first; i < values.length; i += step) {
    low = Math.min(low, at(values, i))
    high = Math.max(high, at(values, i))
  }
  return [low, high]
}
