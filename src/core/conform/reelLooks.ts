import type { PrintArea } from './printArea.ts'
import { PRINT_CELLS, PRINT_STEP, PRINT_WIDTH, type ReelPrints } from './reelPrints.ts'
import { cellMover, NO_SCAN_MOVE, type ScanMove } from './scanMove.ts'

export const COARSE_CELLS = PRINT_CELLS / 4

/** The frames of a reel made ready to be compared: each about its own mean in a common area. */
export type ReelLooks = {
  readonly frames: number
  /** `PRINT_CELLS` a frame, 0 outside the area, with the length of each as a vector. */
  readonly cells: Int8Array
  readonly norms: Float32Array
  /** The same with a quarter of the cells, for a first search. */
  readonly coarse: Int8Array
  readonly coarseNorms: Float32Array
  /** Mean and standard deviation of luma in the area, as signal. */
  readonly means: Float32Array
  readonly deviations: Float32Array
}

/**
 * The frames of a reel in an area, moved as another scan shows them. An area too small to tell
 * pictures apart is taken for the whole.
 */
export const reelLooks = (
  prints: ReelPrints,
  area: PrintArea,
  move: ScanMove = NO_SCAN_MOVE,
): ReelLooks => {
  const { frames } = prints
  const moved = cellMover(move, area)
  const still = new Float32Array(PRINT_CELLS)
  const count = (area.right - area.left) * (area.bottom - area.top)
  const looks: ReelLooks = {
    frames,
    cells: new Int8Array(frames * PRINT_CELLS),
    norms: new Float32Array(frames),
    coarse: new Int8Array(frames * COARSE_CELLS),
    coarseNorms: new Float32Array(frames),
    means: new Float32Array(frames),
    deviations: new Float32Array(frames),
  }
  const seen = new Float32Array(PRINT_CELLS)
  for (let n = 0; n < frames; n++) {
    const from = n * PRINT_CELLS
    let sum = 0
    let squares = 0
    still.set(prints.cells.subarray(from, from + PRINT_CELLS))
    moved(still, seen)
    for (let y = area.top; y < area.bottom; y++)
      for (let i = y * PRINT_WIDTH + area.left, end = i + area.right - area.left; i < end; i++) {
        const value = seen[i] as number
        sum += value
        squares += value * value
      }
    const mean = sum / count
    const deviation = Math.sqrt(Math.max(0, squares / count - mean * mean))
    const unit = (prints.deviations[n] as number) * PRINT_STEP
    looks.means[n] = (prints.means[n] as number) + mean * unit
    looks.deviations[n] = deviation * unit
    fill(looks, n, seen, area, mean, deviation > 0 ? 32 / deviation : 0)
  }
  return looks
}

/** Writes a frame's cells and their norms. */
const fill = (
  looks: ReelLooks,
  n: number,
  seen: Float32Array,
  area: PrintArea,
  mean: number,
  scale: number,
): void => {
  const sums = new Float32Array(COARSE_CELLS)
  let norm = 0
  for (let y = area.top; y < area.bottom; y++)
    for (let x = area.left; x < area.right; x++) {
      const cell = y * PRINT_WIDTH + x
      const value = Math.max(
        -127,
        Math.min(127, Math.round(((seen[cell] as number) - mean) * scale)),
      )
      looks.cells[n * PRINT_CELLS + cell] = value
      norm += value * value
      const coarse = (y >> 1) * (PRINT_WIDTH / 2) + (x >> 1)
      sums[coarse] = (sums[coarse] as number) + value / 4
    }
  looks.norms[n] = Math.sqrt(norm)
  let coarseNorm = 0
  for (let k = 0; k < COARSE_CELLS; k++) {
    const value = Math.round(sums[k] as number)
    looks.coarse[n * COARSE_CELLS + k] = value
    coarseNorm += value * value
  }
  looks.coarseNorms[n] = Math.sqrt(coarseNorm)
}

/** Correlation of two frames' cells, −1…1; 0 where one shows nothing. */
export const correlation = (a: ReelLooks, m: number, b: ReelLooks, n: number): number => {
  let sum = 0
  for (let k = 0, i = m * PRINT_CELLS, j = n * PRINT_CELLS; k < PRINT_CELLS; k++, i++, j++)
    sum += (a.cells[i] as number) * (b.cells[j] as number)
  const norm = (a.norms[m] as number) * (b.norms[n] as number)
  return norm > 0 ? sum / norm : 0
}

/** The same of the coarse cells. */
export const coarseCorrelation = (a: ReelLooks, m: number, b: ReelLooks, n: number): number => {
  let sum = 0
  for (let k = 0, i = m * COARSE_CELLS, j = n * COARSE_CELLS; k < COARSE_CELLS; k++, i++, j++)
    sum += (a.coarse[i] as number) * (b.coarse[j] as number)
  const norm = (a.coarseNorms[m] as number) * (b.coarseNorms[n] as number)
  return norm > 0 ? sum / norm : 0
}
