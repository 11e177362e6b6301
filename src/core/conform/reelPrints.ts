import type { Boundary } from '../shots/boundary.ts'
import { type FrameSignature, GRID_HEIGHT, GRID_WIDTH } from '../shots/frameSignature.ts'
import { areaOfCounts, litLines, type PictureArea } from '../shots/pictureArea.ts'

/** The grid of a print, half that of a frame's signature each way. */
export const PRINT_WIDTH = GRID_WIDTH / 2
export const PRINT_HEIGHT = GRID_HEIGHT / 2
export const PRINT_CELLS = PRINT_WIDTH * PRINT_HEIGHT

/** A step of a cell: a part of the standard deviation of its frame, so ±127 is ±4 of them. */
export const PRINT_STEP = 1 / 32

/**
 * What is kept of every picture of a reel to find it again on another scan: 576 means of luma a
 * frame, apart from the frame's level and contrast, and where shots change.
 */
export type ReelPrints = {
  readonly frames: number
  /** `PRINT_CELLS` a frame, row by row: (luma − mean) / (deviation · PRINT_STEP). */
  readonly cells: Int8Array
  /** Mean and standard deviation of luma as signal, one of each a frame. */
  readonly means: Float32Array
  readonly deviations: Float32Array
  /** The part of the signature's grid that shows picture anywhere on the reel. */
  readonly area: PictureArea
  readonly boundaries: readonly Boundary[]
}

/** Less contrast than this is none: cells are then 0. */
const FLAT = 1e-5

/** Takes the prints of a reel's frames one after another. */
export type PrintTaker = {
  readonly push: (signature: FrameSignature) => void
  readonly finish: (boundaries: readonly Boundary[]) => ReelPrints
}

const grown = <Kept extends Int8Array | Float32Array>(kept: Kept, size: number): Kept => {
  if (size <= kept.length) return kept
  const larger = new (kept.constructor as new (size: number) => Kept)(
    Math.max(size, kept.length * 2),
  )
  larger.set(kept)
  return larger
}

/**
 * Halves a grid along one side, an eighth, three, three and one of each four in a row: what is left
 * can be moved by parts of a cell without much error.
 */
const halveAcross = (from: Float32Array, to: Float32Array, width: number, height: number): void => {
  const half = width / 2
  for (let y = 0; y < height; y++)
    for (let x = 0; x < half; x++) {
      const i = y * width + 2 * x
      const before = from[x > 0 ? i - 1 : i] as number
      const after = from[x < half - 1 ? i + 2 : i + 1] as number
      to[y * half + x] = (before + 3 * ((from[i] as number) + (from[i + 1] as number)) + after) / 8
    }
}

/** The same down a grid. */
const halveDown = (from: Float32Array, to: Float32Array, width: number, height: number): void => {
  for (let y = 0; y < height / 2; y++) {
    const i = 2 * y * width
    const before = y > 0 ? i - width : i
    const after = y < height / 2 - 1 ? i + 2 * width : i + width
    for (let x = 0; x < width; x++)
      to[y * width + x] =
        ((from[before + x] as number) +
          3 * ((from[i + x] as number) + (from[i + width + x] as number)) +
          (from[after + x] as number)) /
        8
  }
}

/** A taker for a reel of about `expected` frames; it may turn out to have more or fewer. */
export const createPrintTaker = (expected: number): PrintTaker => {
  let cells = new Int8Array(expected * PRINT_CELLS)
  let means = new Float32Array(expected)
  let deviations = new Float32Array(expected)
  let frames = 0
  const lit = new Int32Array(GRID_HEIGHT + GRID_WIDTH)
  const halved = new Float32Array(PRINT_CELLS)
  const rows = new Float32Array(PRINT_WIDTH * GRID_HEIGHT)
  const halve = (luma: Float32Array): { mean: number; deviation: number } => {
    halveAcross(luma, rows, GRID_WIDTH, GRID_HEIGHT)
    halveDown(rows, halved, PRINT_WIDTH, GRID_HEIGHT)
    let sum = 0
    let squares = 0
    for (const value of halved) {
      sum += value
      squares += value * value
    }
    const mean = sum / PRINT_CELLS
    return { mean, deviation: Math.sqrt(Math.max(0, squares / PRINT_CELLS - mean * mean)) }
  }
  return {
    push: (signature) => {
      cells = grown(cells, (frames + 1) * PRINT_CELLS)
      means = grown(means, frames + 1)
      deviations = grown(deviations, frames + 1)
      const { mean, deviation } = halve(signature.luma)
      const scale = deviation > FLAT ? 1 / (deviation * PRINT_STEP) : 0
      const at = frames * PRINT_CELLS
      for (let cell = 0; cell < PRINT_CELLS; cell++) {
        const value = Math.round(((halved[cell] as number) - mean) * scale)
        cells[at + cell] = Math.max(-127, Math.min(127, value))
      }
      means[frames] = mean
      deviations[frames] = deviation
      for (const [line, isLit] of litLines(signature).entries())
        lit[line] = (lit[line] as number) + isLit
      frames++
    },
    finish: (boundaries) => ({
      frames,
      cells: cells.slice(0, frames * PRINT_CELLS),
      means: means.slice(0, frames),
      deviations: deviations.slice(0, frames),
      area: areaOfCounts(lit, frames),
      boundaries,
    }),
  }
}

/** The buffers of prints, to be moved to another thread rather than copied. */
export const printBuffers = ({ cells, means, deviations }: ReelPrints): ArrayBufferLike[] => [
  cells.buffer,
  means.buffer,
  deviations.buffer,
]
