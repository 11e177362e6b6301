import { frameCost } from './frameCost.ts'
import { coarseCorrelation, type ReelLooks } from './reelLooks.ts'

/** Frames of the old reel between two that are looked at first, and most places kept of those. */
const LOOK_EVERY = 3
const MOST_PLACES = 4

/** A place whose coarse cells agree less than this is none. */
const LEAST_COARSE = 0.6

/** Frames around a place that are tried one by one. */
export const NEAR = 12

/** Frames of a stretch that are compared to find its shift to the frame. */
const MOST_COMPARED = 40

/** Places of the old reel that look most like a frame of the new one, the best first. */
export const placesLike = (old: ReelLooks, fresh: ReelLooks, n: number): readonly number[] => {
  const scores: { m: number; score: number }[] = []
  for (let m = 0; m < old.frames; m += LOOK_EVERY) {
    const score = coarseCorrelation(old, m, fresh, n)
    if (score < LEAST_COARSE) continue
    const last = scores.at(-1)
    if (last && m - last.m <= NEAR) {
      if (score > last.score) scores[scores.length - 1] = { m, score }
    } else scores.push({ m, score })
  }
  return scores
    .sort((a, b) => b.score - a.score)
    .slice(0, MOST_PLACES)
    .map(({ m }) => m)
}

/** Frames spread over a stretch, its first and last few among them. */
export const spread = (from: number, to: number): readonly number[] => {
  const length = to - from
  if (length <= MOST_COMPARED) return Array.from({ length }, (_, k) => from + k)
  const inside = MOST_COMPARED - 6
  const between = Array.from(
    { length: inside },
    (_, k) => from + 3 + Math.floor((k * (length - 6)) / inside),
  )
  return [from, from + 1, from + 2, ...between, to - 3, to - 2, to - 1]
}

/** Mean cost of frames under a shift, none above that of a frame that is not found. */
export const meanCost = (
  old: ReelLooks,
  fresh: ReelLooks,
  frames: readonly number[],
  shift: number,
): number => {
  let sum = 0
  for (const n of frames) {
    const m = n - shift
    if (m >= 0 && m < old.frames) sum += Math.min(0, frameCost(old, m, fresh, n))
  }
  return frames.length > 0 ? sum / frames.length : 0
}

/**
 * The shift under which frames cost least, looked for around `guess` and on from there while it
 * gets better.
 */
export const refineShift = (
  old: ReelLooks,
  fresh: ReelLooks,
  frames: readonly number[],
  guess: number,
): { shift: number; cost: number } => {
  let best = { shift: guess, cost: meanCost(old, fresh, frames, guess) }
  let tried = { from: guess, to: guess }
  const tryShift = (shift: number): void => {
    const cost = meanCost(old, fresh, frames, shift)
    if (cost < best.cost) best = { shift, cost }
  }
  for (;;) {
    const wanted = { from: best.shift - NEAR, to: best.shift + NEAR }
    if (wanted.from >= tried.from && wanted.to <= tried.to) return best
    for (let shift = tried.from - 1; shift >= wanted.from; shift--) tryShift(shift)
    for (let shift = tried.to + 1; shift <= wanted.to; shift++) tryShift(shift)
    tried = { from: Math.min(tried.from, wanted.from), to: Math.max(tried.to, wanted.to) }
  }
}
