import { type FrameSignature, GRID_HEIGHT, GRID_WIDTH } from './frameSignature.ts'

/** A part of the luma grid, in cells: `right` and `bottom` are the first cells outside. */
export type PictureArea = {
  readonly left: number
  readonly top: number
  readonly right: number
  readonly bottom: number
}

/** A row or column this dark, with so little in it, may be a bar beside the picture. */
const BAR_BELOW = 0.08
const BAR_SPREAD = 0.03

/** What is seen in fewer of the frames than this is dirt on a bar, not the picture. */
const LEAST_SEEN = 0.04

/** Bars that leave less than this many cells are taken to be part of a dark picture. */
const LEAST_WIDTH = 16
const LEAST_HEIGHT = 12

const hasPicture = (luma: Float32Array, start: number, step: number, count: number): boolean => {
  let least = Number.POSITIVE_INFINITY
  let most = Number.NEGATIVE_INFINITY
  let sum = 0
  for (let k = 0, i = start; k < count; k++, i += step) {
    const value = luma[i] as number
    if (value < least) least = value
    if (value > most) most = value
    sum += value
  }
  return sum > BAR_BELOW * count || most - least > BAR_SPREAD
}

/** Which rows and columns of the grid show picture, 1 or 0: the rows first. */
export const litLines = (signature: FrameSignature): Uint8Array => {
  const lit = new Uint8Array(GRID_HEIGHT + GRID_WIDTH)
  for (let y = 0; y < GRID_HEIGHT; y++)
    lit[y] = hasPicture(signature.luma, y * GRID_WIDTH, 1, GRID_WIDTH) ? 1 : 0
  for (let x = 0; x < GRID_WIDTH; x++)
    lit[GRID_HEIGHT + x] = hasPicture(signature.luma, x, GRID_WIDTH, GRID_HEIGHT) ? 1 : 0
  return lit
}

/** The range of lines that are lit often enough; half-covered lines at a bar's edge left out. */
const range = (counts: Int32Array, from: number, size: number, needed: number) => {
  let first = 0
  while (first < size && (counts[from + first] as number) <= needed) first++
  let end = size
  while (end > first && (counts[from + end - 1] as number) <= needed) end--
  return { first: first === 0 ? 0 : first + 1, end: end === size ? size : end - 1 }
}

/**
 * The area that shows picture, from how many of `frames` frames light each line: what lies
 * outside are black bars beside, above or below it, which would hide a change of shot.
 */
export const areaOfCounts = (counts: Int32Array, frames: number): PictureArea => {
  const rows = range(counts, 0, GRID_HEIGHT, LEAST_SEEN * frames)
  const columns = range(counts, GRID_HEIGHT, GRID_WIDTH, LEAST_SEEN * frames)
  const isTall = rows.end - rows.first >= LEAST_HEIGHT
  const isWide = columns.end - columns.first >= LEAST_WIDTH
  return {
    left: isWide ? columns.first : 0,
    right: isWide ? columns.end : GRID_WIDTH,
    top: isTall ? rows.first : 0,
    bottom: isTall ? rows.end : GRID_HEIGHT,
  }
}
