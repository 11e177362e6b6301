import { at } from '../core/base/assert.ts'

/** Levels that an instrument tells apart: four 10-bit codes to each. */
export const LEVELS = 256

/** Counts of 256 levels for each column, column after column. */
export type LevelColumns = { readonly counts: Uint32Array; readonly columns: number }

/** The same of R′, G′ and B′. */
export type ChannelColumns = {
  readonly counts: readonly [r: Uint32Array, g: Uint32Array, b: Uint32Array]
  readonly columns: number
}

/**
 * The levels that are drawn at their place. The lowest and the highest hold reserved codes alone,
 * and all that is past them: they are marked at the edge.
 */
export const FIRST_LEVEL = 1
export const LAST_LEVEL = LEVELS - 2

/** The signal (0 black, 1 peak) at the lower edge of a level, half a code below its first code. */
export const levelEdge = (level: number): number => (level * 4 - 0.5 - 64) / 876

/** How many pixels a column has; all have as many, but for one. */
export const columnPixels = (counts: Uint32Array): number => {
  let sum = 0
  for (let i = 0; i < LEVELS && i < counts.length; i++) sum += at(counts, i)
  return sum
}
