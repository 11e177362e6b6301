import { at } from '../base/assert.ts'
import { codeScale } from '../colour/codeValues.ts'
import { LUMA_WEIGHTS } from '../colour/lumaWeights.ts'
import { chromaHeight, chromaWidth, type Planes, type Samples } from '../picture/planes.ts'

/** The grid a frame is reduced to. */
export const GRID_WIDTH = 64
export const GRID_HEIGHT = 36
export const CHROMA_WIDTH = 16
export const CHROMA_HEIGHT = 9

/** What the shot finder keeps of a frame: small means of its luma and chroma, as signal. */
export type FrameSignature = {
  /** GRID_WIDTH × GRID_HEIGHT means of luma, 0 black, 1 peak (by narrow-range codes). */
  readonly luma: Float32Array
  /** CHROMA_WIDTH × CHROMA_HEIGHT means of each colour difference, about zero. */
  readonly cb: Float32Array
  readonly cr: Float32Array
}

/** Samples read in each cell, at least; more would only average out grain further. */
const ROWS_A_CELL = 4
const COLUMNS_A_CELL = 8

/** Cell edges along one side: `cells` + 1 places from 0 to `size`. */
const edges = (size: number, cells: number): Int32Array =>
  Int32Array.from({ length: cells + 1 }, (_, i) => Math.floor((i * size) / cells))

/**
 * Means of a plane over a grid, `scale`·(mean − `zero`). Of a large cell some samples are read,
 * evenly spread: enough to average grain out, few enough to cost little at any size.
 */
const gridMeans = (
  plane: Samples,
  width: number,
  height: number,
  columns: number,
  rows: number,
  zero: number,
  scale: number,
): Float32Array => {
  const out = new Float32Array(columns * rows)
  const xs = edges(width, columns)
  const ys = edges(height, rows)
  const stepX = Math.max(1, Math.floor(width / columns / COLUMNS_A_CELL))
  const stepY = Math.max(1, Math.floor(height / rows / ROWS_A_CELL))
  for (let row = 0; row < rows; row++) {
    const top = Math.min(at(ys, row), height - 1)
    const bottom = Math.max(top + 1, at(ys, row + 1))
    for (let column = 0; column < columns; column++) {
      const left = Math.min(xs[column] as number, width - 1)
      const right = Math.max(left + 1, xs[column + 1] as number)
      let sum = 0
      let count = 0
      for (let y = top; y < bottom; y += stepY)
        for (let i = y * width + left, end = y * width + right; i < end; i += stepX) {
          sum += plane[i] as number
          count++
        }
      out[row * columns + column] = (sum / count - zero) * scale
    }
  }
  return out
}

/**
 * The signature of a frame of any layout and depth. Levels are taken by narrow-range codes for
 * Y′CbCr and full-range codes for R′G′B′: a shot change is the same in either.
 */
export const frameSignature = (planes: Planes): FrameSignature => {
  const { width, height, layout, depth, samples } = planes
  const isRgb = layout === 'rgb'
  const { black, peak, chromaZero, chromaHalf } = codeScale(depth, isRgb ? 'full' : 'narrow')
  const scale = 1 / (peak - black)
  const grid = (plane: Samples): Float32Array =>
    gridMeans(plane, width, height, GRID_WIDTH, GRID_HEIGHT, black, scale)
  if (!isRgb) {
    const luma = grid(samples[0])
    const chroma = (plane: Samples): Float32Array =>
      gridMeans(
        plane,
        chromaWidth(layout, width),
        chromaHeight(layout, height),
        CHROMA_WIDTH,
        CHROMA_HEIGHT,
        chromaZero,
        1 / (2 * chromaHalf),
      )
    return { luma, cb: chroma(samples[1]), cr: chroma(samples[2]) }
  }
  const [r, g, b] = [grid(samples[0]), grid(samples[1]), grid(samples[2])]
  const [kr, kg, kb] = LUMA_WEIGHTS.bt709
  const luma = r.map((value, i) => kr * value + kg * at(g, i) + kb * at(b, i))
  const colour = (plane: Float32Array, k: number): Float32Array =>
    coarser(plane.map((value, i) => (value - at(luma, i)) / (2 * (1 - k))))
  return { luma, cb: colour(b, kb), cr: colour(r, kr) }
}

/** The luma grid's cells brought together to those of the chroma grid. */
const coarser = (grid: Float32Array): Float32Array => {
  const out = new Float32Array(CHROMA_WIDTH * CHROMA_HEIGHT)
  const across = GRID_WIDTH / CHROMA_WIDTH
  const down = GRID_HEIGHT / CHROMA_HEIGHT
  for (let y = 0; y < GRID_HEIGHT; y++)
    for (let x = 0; x < GRID_WIDTH; x++) {
      const cell = Math.floor(y / down) * CHROMA_WIDTH + Math.floor(x / across)
      out[cell] = at(out, cell) + at(grid, y * GRID_WIDTH + x) / (across * down)
    }
  return out
}
