import { at } from '../base/assert.ts'
import type { FramingMap } from './framing.ts'
import { keysCubic } from './keysCubic.ts'

/** As wide as a filter gets: twice what the smallest zoom with the smallest squeeze asks for. */
const MOST_WIDTH = 32

const widthOf = (apart: number): number => Math.min(Math.max(apart, 1), MOST_WIDTH)

/**
 * How many times wider than between samples the filter is along the columns and the rows of the
 * scan: as many pixels as one delivered pixel is apart from the next there, never below 1. So a
 * picture that is made smaller has what its raster cannot hold taken out, and does not alias.
 */
export const filterWidths = ({
  xx,
  xy,
  yx,
  yy,
}: FramingMap): { readonly across: number; readonly down: number } => ({
  across: widthOf(Math.hypot(xx, xy)),
  down: widthOf(Math.hypot(yx, yy)),
})

/** How many samples on each side of a place a filter `width` times as wide reads. */
export const tapReach = (width: number): number => Math.ceil(2 * width)

/**
 * The weights (2·`tapReach(width)` of them, adding up to 1) of the samples about `place` into
 * `weights`, by Keys' cubic made `width` times as wide. Returns where the first of them lies: it and
 * the last may be past an end, where the end is repeated.
 */
export const cubicTaps = (place: number, width: number, weights: Float64Array): number => {
  const reach = tapReach(width)
  const first = Math.floor(place) - reach + 1
  let sum = 0
  for (let k = 0; k < 2 * reach; k++) {
    const weight = keysCubic((first + k - place) / width)
    weights[k] = weight
    sum += weight
  }
  for (let k = 0; k < 2 * reach; k++) weights[k] = at(weights, k) / sum
  return first
}
