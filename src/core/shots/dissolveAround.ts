import { frame } from '../time/frame.ts'
import type { Boundary } from './boundary.ts'
import { dissolveShares, type Share, type Stretch } from './dissolveShares.ts'
import type { FrameWindow } from './frameWindow.ts'
import { rampFit } from './rampFit.ts'
import { spreadOfDifference } from './spreadOfDifference.ts'

/** The longest dissolve looked for, from its last clean frame before to its first one after. */
const LONGEST = 72

/** The shortest one: three mixed frames. A shorter blend is a cut. */
const SHORTEST = 4

/** The line through the shares is drawn anew from its own ends until it stays, at most so often. */
const PASSES = 6

/** A line that misses the shares by this part of its rise is none. */
const MOST_ERROR = 0.35

/** The pictures on the two sides differ at least this much, and over this much of the area. */
const LEAST_SIDES = 0.35
const LEAST_SPREAD = 0.35

/** Somewhere a third of a dissolve changes the picture at least this much. */
const LEAST_THIRD = 0.15

/** In soft pictures it changes less, but then the mixture explains nearly everything. */
const LEAST_THIRD_CLEAR = 0.05
const CLEAR_ERROR = 0.04
const CLEAR_UNEXPLAINED = 0.1

/** The least score of a dissolve, and of a short one, which whip pans come near to. */
const LEAST_SCORE = 0.45
const SHORT = 8
const LEAST_SCORE_SHORT = 0.8

/** Half-lengths tried once there is a dissolve, to find the one that explains most. */
const HALVES = [3, 6, 11, 18, 28, 40] as const

/** A supposed dissolve between its last clean frame before and its first clean frame after. */
type Supposed = { readonly before: number; readonly after: number; readonly score: number }

const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / Math.max(1, values.length)

/** The shares well inside a stretch. */
const inside = (shares: readonly Share[], from: number, to: number): readonly Share[] => {
  const edge = (to - from) / 5
  return shares.filter(({ x }) => x > from + edge && x < to - edge)
}

/**
 * The part of the detail that is gone half way, −0.5…0.5: two pictures that have nothing to do
 * with each other lose half of it when they are mixed, a camera that moves on loses none.
 */
const detailLost = (window: FrameWindow, before: number, after: number): number => {
  const detail = (n: number): number => window.at(n)?.detail ?? 0
  const length = after - before
  const middle: number[] = []
  for (let n = Math.ceil(before + length * 0.35); n <= before + length * 0.65; n++)
    middle.push(detail(n))
  const [less, more] = [
    Math.min(detail(before), detail(after)),
    Math.max(detail(before), detail(after)),
  ]
  const sides = 0.7 * less + 0.3 * more
  return sides > 0 ? Math.min(0.5, Math.max(-0.5, 1 - mean(middle) / sides)) : 0
}

/**
 * Whether somewhere within a third of the stretch the picture can no longer be followed block by
 * block: where it can all the way, one scene moves smoothly.
 */
const isLostOnTheWay = (window: FrameWindow, from: number, to: number, least: number): boolean => {
  const half = Math.max(1, Math.round((to - from) / 6))
  const step = Math.max(1, Math.round(half / 2))
  for (let n = from + half; n <= to - half; n += step)
    if (window.change(n - half, n + half) >= least) return true
  return false
}

/** The dissolve that the frames around n suggest, looked at `half` frames to each side. */
const supposedAround = (
  window: FrameWindow,
  n: number,
  half: number,
  shot: Stretch,
): Supposed | undefined => {
  let a = Math.max(shot.from, n - half)
  let b = Math.min(shot.to - 1, n + half)
  if (!isLostOnTheWay(window, a, b, LEAST_THIRD_CLEAR)) return undefined
  let shares: readonly Share[] = []
  let error = 1
  for (let pass = 0, isSettled = false; pass < PASSES && !isSettled; pass++) {
    const margin = pass === 0 ? half : Math.max(6, Math.round((b - a) * 0.6))
    const part = { from: Math.max(shot.from, a - margin), to: Math.min(shot.to, b + margin + 1) }
    shares = dissolveShares(window, a, b, part, shot)
    const ramp = rampFit(shares, LONGEST)
    if (!ramp || ramp.error > MOST_ERROR) return undefined
    const between = inside(shares, ramp.from, ramp.to)
    if (pass === 0 && mean(between.map((share) => share.alike + share.unexplained)) > 1)
      return undefined
    isSettled = pass > 0 && Math.abs(a - ramp.from) + Math.abs(b - ramp.to) < 2
    a = ramp.from
    b = ramp.to
    error = ramp.error
  }
  const change = window.change(a, b)
  if (b - a < SHORTEST || change < LEAST_SIDES) return undefined
  if (spreadOfDifference(window, a, b) < LEAST_SPREAD) return undefined
  const between = inside(shares, a, b)
  if (between.length === 0) return undefined
  const unexplained = mean(between.map((share) => share.unexplained))
  const isClear = error < CLEAR_ERROR && unexplained < CLEAR_UNEXPLAINED
  if (!isLostOnTheWay(window, a, b, isClear ? LEAST_THIRD_CLEAR : LEAST_THIRD)) return undefined
  const alike = mean(between.map((share) => share.alike))
  const score = change + detailLost(window, a, b) - unexplained - alike - 2 * error
  if (score < (b - a < SHORT ? LEAST_SCORE_SHORT : LEAST_SCORE)) return undefined
  return { before: a, after: b, score }
}

/**
 * The dissolve around frame n of a shot, if there is one: its frames are mixtures of a picture
 * before and a picture after it, with shares that run from one to the other along a line.
 */
export const dissolveAround = (
  window: FrameWindow,
  n: number,
  half: number,
  shot: Stretch,
): Boundary | undefined => {
  let best = supposedAround(window, n, half, shot)
  if (!best) return undefined
  const middle = Math.round((best.before + best.after) / 2)
  const length = best.after - best.before
  for (const other of HALVES) {
    if (other < length * 0.4 || other > length * 2.5) continue
    const better = supposedAround(window, middle, other, shot)
    if (better && better.score > best.score) best = better
  }
  return {
    kind: 'dissolve',
    first: frame(best.before + 1),
    last: frame(best.after - 1),
    confidence: Math.min(0.95, 0.5 + 0.6 * Math.max(0, best.score - LEAST_SCORE)),
  }
}
