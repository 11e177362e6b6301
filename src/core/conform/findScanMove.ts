import { at } from '../base/assert.ts'
import type { PrintArea } from './printArea.ts'
import { PRINT_CELLS, PRINT_WIDTH, type ReelPrints } from './reelPrints.ts'
import { cellMover, type ScanMove } from './scanMove.ts'

/** Steps of the search, each tried until it does not help. */
const STEPS = [0.4, 0.2, 0.1, 0.05, 0.025, 0.0125]

/** A step of growth that moves the picture's sides about as much as a step of place. */
const ZOOM_OF_STEP = 1 / 16

const LARGEST_MOVE = 3
const LARGEST_ZOOM = 1.15

/** Cells at the border that are not compared, as the other scan may not show them. */
const BORDER = 2

/** Frames of a stretch found on both reels, and other frames of the old one it may be. */
export type FoundFrames = {
  /** Frames of the new reel. */
  readonly fresh: readonly number[]
  /** Frames of the old reel for each shift that is tried, in order, as many as of the new one. */
  readonly old: readonly (readonly number[])[]
  /** The place of the shift under which it was found. */
  readonly own: number
}

/** What grain leaves of two pictures that are the same. */
const NOISE_LEFT = 0.001

const cellsOf = (prints: ReelPrints) => {
  const known = new Map<number, Float32Array>()
  return (n: number): Float32Array => {
    const before = known.get(n)
    if (before) return before
    const cells = Float32Array.from(prints.cells.subarray(n * PRINT_CELLS, (n + 1) * PRINT_CELLS))
    known.set(n, cells)
    return cells
  }
}

/** 1 − the correlation of two pictures, border left out. */
const unexplained = (old: Float32Array, fresh: Float32Array, area: PrintArea): number => {
  let count = 0
  let a = 0
  let b = 0
  let aa = 0
  let bb = 0
  let ab = 0
  for (let y = area.top + BORDER; y < area.bottom - BORDER; y++)
    for (let x = area.left + BORDER; x < area.right - BORDER; x++) {
      const value = old[y * PRINT_WIDTH + x] as number
      const other = fresh[y * PRINT_WIDTH + x] as number
      count++
      a += value
      b += other
      aa += value * value
      bb += other * other
      ab += value * other
    }
  const spread = (aa - (a * a) / count) * (bb - (b * b) / count)
  return 1 - (spread > 0 ? Math.max(0, ab - (a * b) / count) / Math.sqrt(spread) : 0)
}

const isWithin = ({ dx, dy, zoom }: ScanMove): boolean =>
  Math.abs(dx) <= LARGEST_MOVE &&
  Math.abs(dy) <= LARGEST_MOVE &&
  zoom <= LARGEST_ZOOM &&
  zoom >= 1 / LARGEST_ZOOM

/**
 * The move from one scan to another under which what was found agrees best, each stretch at that
 * of its shifts that suits it: a slow pan or zoom of the camera would else be taken for a move of
 * the scan. Steps along each number of the move from `begin`, halved where none helps.
 */
export const findScanMove = (
  old: ReelPrints,
  fresh: ReelPrints,
  found: readonly FoundFrames[],
  area: PrintArea,
  begin: ScanMove,
): ScanMove => {
  const oldCells = cellsOf(old)
  const freshCells = cellsOf(fresh)
  const seen = new Float32Array(PRINT_CELLS)
  const costOfShift = (
    stretch: FoundFrames,
    place: number,
    moved: ReturnType<typeof cellMover>,
  ): number => {
    let cost = 0
    for (const [k, n] of (stretch.old[place] ?? []).entries()) {
      moved(oldCells(n), seen)
      cost += Math.log(unexplained(seen, freshCells(at(stretch.fresh, k)), area) + NOISE_LEFT)
    }
    return cost
  }
  /** The shift of each stretch that suited it last; the next is one of its neighbours. */
  const suited = found.map(({ own }) => own)
  const costOf = (move: ScanMove): { readonly cost: number; readonly suits: readonly number[] } => {
    const moved = cellMover(move, area)
    let cost = 0
    const suits = found.map((stretch, index) => {
      let least = Number.POSITIVE_INFINITY
      let suit = suited[index] ?? 0
      for (const place of [suit - 1, suit, suit + 1]) {
        if (place < 0 || place >= stretch.old.length) continue
        const each = costOfShift(stretch, place, moved)
        if (each >= least) continue
        least = each
        suit = place
      }
      cost += least
      return suit
    })
    return { cost, suits }
  }
  let best = begin
  let least = costOf(best).cost
  for (let level = 0; level < STEPS.length; ) {
    const step = at(STEPS, level)
    const { dx, dy, zoom } = best
    const tries: readonly ScanMove[] = [
      { dx: dx + step, dy, zoom },
      { dx: dx - step, dy, zoom },
      { dx, dy: dy + step, zoom },
      { dx, dy: dy - step, zoom },
      { dx, dy, zoom: zoom + step * ZOOM_OF_STEP },
      { dx, dy, zoom: zoom - step * ZOOM_OF_STEP },
    ]
    let isBetter = false
    for (const move of tries) {
      if (!isWithin(move)) continue
      const { cost, suits } = costOf(move)
      if (cost >= least) continue
      least = cost
      for (const [index, suit] of suits.entries()) suited[index] = suit
      best = move
      isBetter = true
    }
    if (!isBetter) level++
  }
  return best
}
