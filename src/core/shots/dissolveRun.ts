import { frame } from '../time/frame.ts'
import type { Boundary } from './boundary.ts'
import type { FrameSignature } from './frameSignature.ts'
import { type FrameWindow, isBlank } from './frameWindow.ts'
import { mixtureOf } from './mixture.ts'

/** Half-spans, in frames, over which a frame is tried as a mixture. */
const SPANS = [3, 5, 9, 15, 24] as const

/** A mixed frame leaves at most this part of its contrast unexplained. */
const MOST_UNEXPLAINED = 0.12

/** Pictures on the two sides of a mixed frame differ at least this much. */
const LEAST_CHANGE = 0.3

const isNonBlankRun = (window: FrameWindow, from: number, to: number): boolean => {
  for (let n = from; n <= to; n++) if (isBlank(window.at(n))) return false
  return true
}

/** The half-span over which frame n is a mixture of what lies on its two sides; 0 for none. */
export const mixedSpan = (window: FrameWindow, n: number, from: number, to: number): number => {
  const middle = window.at(n)
  if (!middle || isBlank(middle)) return 0
  for (const span of SPANS) {
    if (n - span < from || n + span >= to) break
    const a = window.at(n - span)
    const b = window.at(n + span)
    if (!a || !b || isBlank(a) || isBlank(b)) break
    const mixture = mixtureOf(window, n, n - span, n + span)
    if (!mixture || mixture.unexplained > MOST_UNEXPLAINED) continue
    if (mixture.share < 0.25 || mixture.share > 0.75) continue
    if (window.change(n - span, n + span) < LEAST_CHANGE) continue
    return span
  }
  return 0
}

/** Shares this near to none or all are not used to draw the line through a dissolve. */
const MARGIN = 0.15

/** The pictures on the two sides of a dissolve differ at least this much. */
const LEAST_SIDES = 0.5

/** Below this a dissolve is not even doubtful. */
const LEAST_CONFIDENCE = 0.42

/** A straight line through points, by least squares. */
const lineThrough = (points: readonly (readonly [x: number, y: number])[]) => {
  const count = points.length
  const mx = points.reduce((sum, [x]) => sum + x, 0) / count
  const my = points.reduce((sum, [, y]) => sum + y, 0) / count
  let xy = 0
  let xx = 0
  for (const [x, y] of points) {
    xy += (x - mx) * (y - my)
    xx += (x - mx) * (x - mx)
  }
  const slope = xx > 0 ? xy / xx : 0
  return { slope, at: (x: number) => my + slope * (x - mx) }
}

/** Somewhere in a dissolve a third of its length changes the picture at least this much. */
const LEAST_THIRD = 0.15

/** With more than this unexplained it must change more than that. */
const WELL_EXPLAINED = 0.15
const LEAST_THIRD_UNCLEAR = 0.25

/** What neighbouring frames change by because of grain and dirt alone: the median of some pairs. */
const unrest = (window: FrameWindow, from: number, to: number): number => {
  const changes: number[] = []
  for (let n = from; n < to; n += 2) changes.push(window.change(n, n + 1))
  changes.sort((a, b) => a - b)
  return changes[changes.length >> 1] ?? 0
}

/**
 * Whether every third of a supposed dissolve can be followed block by block: then it is one scene
 * that moves smoothly. Where the second picture takes over from the first, nothing can be followed.
 */
const isOneMove = (
  window: FrameWindow,
  zero: number,
  one: number,
  unexplained: number,
): boolean => {
  const clear = unexplained < WELL_EXPLAINED ? LEAST_THIRD : LEAST_THIRD_UNCLEAR
  const least = clear + unrest(window, Math.floor(zero), Math.ceil(one))
  const half = Math.max(1, Math.round((one - zero) / 6))
  const step = Math.max(1, Math.round(half / 2))
  for (let n = Math.floor(zero); n <= one; n += step)
    if (window.change(n - half, n + half) >= least) return false
  return true
}

/** Of a new picture more than this part differs; of a caption or an insert less. */
const LEAST_SPREAD = 0.35

/**
 * Over how much of the picture two frames differ, 0…1: (Σ|d|)² / (N·Σd²), which is 1 where they
 * differ alike everywhere, and about the part of the area where they differ in that part only.
 */
const spreadOfDifference = (a: FrameSignature, b: FrameSignature): number => {
  let sum = 0
  let squares = 0
  for (let i = 0; i < a.luma.length; i++) {
    const d = Math.abs((a.luma[i] as number) - (b.luma[i] as number))
    sum += d
    squares += d * d
  }
  return squares > 0 ? (sum * sum) / (a.luma.length * squares) : 0
}

/** So much contrast gone half way speaks for two pictures by itself. */
const CLEARLY_LOST = 0.12

/**
 * The part of the contrast that is gone half way, 0…0.3: two pictures that have nothing to do with
 * each other lose 1 − 1/√2 of it when they are mixed; a moving camera loses none.
 */
const contrastLost = (window: FrameWindow, left: number, middle: number, right: number): number => {
  const deviation = (n: number): number => window.at(n)?.deviation ?? 0
  const lesser = Math.min(deviation(left), deviation(right))
  return lesser > 0 ? Math.min(0.3, Math.max(0, 1 - deviation(middle) / lesser)) : 0
}

/**
 * A run of mixed frames as a dissolve, with the first and last frame that differ because of it;
 * undefined where the two sides are one scene or the shares do not run from one to the other.
 * `from` and `to` bound the frames that belong to the two shots.
 */
export const dissolveOfRun = (
  window: FrameWindow,
  run: { readonly first: number; readonly last: number; readonly span: number },
  from: number,
  to: number,
): Boundary | undefined => {
  const reach = Math.max(4, run.span)
  const left = Math.max(from, run.first - reach)
  const right = Math.min(to - 1, run.last + reach)
  const [before, after] = [window.at(left), window.at(right)]
  if (!before || !after || !isNonBlankRun(window, left, right)) return undefined
  if (spreadOfDifference(before, after) < LEAST_SPREAD) return undefined
  const change = window.change(left, right)
  if (change < LEAST_SIDES) return undefined
  const points: (readonly [number, number])[] = []
  let unexplained = 0
  for (let n = left + 1; n < right; n++) {
    const mixture = mixtureOf(window, n, left, right)
    if (!mixture) continue
    if (mixture.share < MARGIN || mixture.share > 1 - MARGIN) continue
    points.push([n, mixture.share])
    unexplained += mixture.unexplained
  }
  if (points.length < 2) return undefined
  const line = lineThrough(points)
  if (line.slope <= 0) return undefined
  const wrong = points.reduce((sum, [x, y]) => sum + Math.abs(line.at(x) - y), 0) / points.length
  const meanUnexplained = unexplained / points.length
  if (wrong > 0.15 || meanUnexplained > 0.35) return undefined
  const middle = (points[0]?.[0] ?? 0) + (points.at(-1)?.[0] ?? 0)
  const zero = middle / 2 - line.at(middle / 2) / line.slope
  const one = zero + 1 / line.slope
  const first = Math.max(left + 1, Math.round(zero) + 1)
  const last = Math.max(first, Math.min(right - 1, Math.round(one) - 1))
  const faded = contrastLost(window, left, Math.round(middle / 2), right)
  if (faded < CLEARLY_LOST && isOneMove(window, zero, one, meanUnexplained)) return undefined
  const confidence = Math.min(0.95, change + faded - wrong - meanUnexplained)
  if (confidence < LEAST_CONFIDENCE) return undefined
  return { kind: 'dissolve', first: frame(first), last: frame(last), confidence }
}
