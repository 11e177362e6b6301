import { type FrameSignature, GRID_HEIGHT, GRID_WIDTH } from './frameSignature.ts'
import type { PictureArea } from './pictureArea.ts'

/** A frame as it is seen inside the picture area. */
export type SeenFrame = {
  readonly signature: FrameSignature
  readonly luma: Float32Array
  /** Mean and standard deviation of luma in the area: its level and its contrast. */
  readonly mean: number
  readonly deviation: number
  /** Mean square of the steps from cell to cell: contrast that a slow gradient has no part in. */
  readonly detail: number
  /** Sums of luma and of its square over all cells above and left of a corner. */
  readonly sums: Float64Array
  readonly squares: Float64Array
}

/** Corners in a row of `sums` and `squares`. */
const CORNERS = GRID_WIDTH + 1

const cornerSums = (luma: Float32Array) => {
  const sums = new Float64Array(CORNERS * (GRID_HEIGHT + 1))
  const squares = new Float64Array(CORNERS * (GRID_HEIGHT + 1))
  for (let y = 0; y < GRID_HEIGHT; y++) {
    let sum = 0
    let square = 0
    for (let x = 0; x < GRID_WIDTH; x++) {
      const value = luma[y * GRID_WIDTH + x] as number
      sum += value
      square += value * value
      const above = y * CORNERS + x + 1
      sums[above + CORNERS] = (sums[above] as number) + sum
      squares[above + CORNERS] = (squares[above] as number) + square
    }
  }
  return { sums, squares }
}

/** The sum over a rectangle of cells. */
export const sumOver = (
  sums: Float64Array,
  x: number,
  y: number,
  width: number,
  height: number,
): number => {
  const top = y * CORNERS + x
  const bottom = top + height * CORNERS
  return (
    (sums[bottom + width] as number) -
    (sums[bottom] as number) -
    (sums[top + width] as number) +
    (sums[top] as number)
  )
}

/** Contrast, as signal, below which a frame shows nothing: black, white, or one colour. */
const BLANK_BELOW = 0.01

export const isBlank = (frame: SeenFrame | undefined): boolean =>
  frame !== undefined && frame.deviation < BLANK_BELOW

export const seenFrame = (signature: FrameSignature, area: PictureArea): SeenFrame => {
  const { luma } = signature
  const { sums, squares } = cornerSums(luma)
  const width = area.right - area.left
  const height = area.bottom - area.top
  let steps = 0
  for (let y = area.top; y < area.bottom; y++)
    for (let i = y * GRID_WIDTH + area.left, end = i + width - 1; i < end; i++) {
      const step = (luma[i + 1] as number) - (luma[i] as number)
      steps += step * step
    }
  const count = width * height
  const mean = sumOver(sums, area.left, area.top, width, height) / count
  const square = sumOver(squares, area.left, area.top, width, height) / count
  const deviation = Math.sqrt(Math.max(0, square - mean * mean))
  return { signature, luma, mean, deviation, detail: steps / count, sums, squares }
}
