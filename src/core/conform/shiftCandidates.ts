import { BLANK_BELOW } from './frameCost.ts'
import type { ReelLooks } from './reelLooks.ts'
import { meanCost, NEAR, placesLike, refineShift, spread } from './shiftSearch.ts'

/** A shift under which frames `from` up to `to` of the new reel may show what the old one does. */
export type ShiftCandidate = {
  /** Frames from the old reel to the new: new = old + shift. */
  readonly shift: number
  readonly from: number
  readonly to: number
}

/** Frames of the new reel between two that are looked for. */
const ANCHOR_EVERY = 24

/** Blank frames beside a part on which its shifts are tried too, at most. */
const MOST_BLANK = 500

/** A match this good where the reel goes on as before needs no search. */
const GOES_ON = -2

/** Frames of a part that are looked for: near both ends, and some between. */
const anchorsOf = (from: number, to: number): readonly number[] => {
  const [first, last] = [Math.min(from + 2, to - 1), Math.max(to - 3, from)]
  const count = Math.max(1, Math.ceil((last - first) / ANCHOR_EVERY))
  const anchors = Array.from({ length: count + 1 }, (_, k) =>
    Math.round(first + (k * (last - first)) / count),
  )
  return [...new Set(anchors)]
}

/** Frames on which the shifts of a part are tried: some more on each side, and all that is blank. */
const reachOf = ({ frames, deviations }: ReelLooks, from: number, to: number) => {
  const isBlankAt = (n: number): boolean => (deviations[n] ?? 1) < BLANK_BELOW
  let first = Math.max(0, from - NEAR)
  while (first > 0 && from - first < MOST_BLANK && isBlankAt(first - 1)) first--
  let last = Math.min(frames, to + NEAR)
  while (last < frames && last - to < MOST_BLANK && isBlankAt(last)) last++
  return { first, last }
}

/**
 * Shifts worth trying for each part of the new reel. Frames spread over each shot are looked for
 * everywhere on the old reel by coarse cells, then to the frame over the frames around them and
 * over the whole shot. Where the reel goes on as it did, nothing is searched.
 */
export const shiftCandidates = (
  old: ReelLooks,
  fresh: ReelLooks,
  shots: readonly { readonly from: number; readonly to: number }[],
  oldShots: readonly number[],
): readonly ShiftCandidate[] => {
  const found = new Map<string, ShiftCandidate>()
  const add = (shift: number, from: number, to: number): void => {
    found.set(`${shift} ${from} ${to}`, { shift, from, to })
  }
  let going: number | undefined
  for (const { from, to } of shots) {
    const whole = spread(from, to)
    const { first, last } = reachOf(fresh, from, to)
    if (going !== undefined) add(going, first, last)
    for (const n of anchorsOf(from, to)) {
      const around = spread(Math.max(from, n - NEAR), Math.min(to, n + NEAR + 1))
      if (going !== undefined && meanCost(old, fresh, around, going) < GOES_ON) {
        const near = refineShift(old, fresh, around, going)
        add(near.shift, first, last)
        going = near.shift
        continue
      }
      let best = 0
      for (const m of placesLike(old, fresh, n)) {
        const local = refineShift(old, fresh, around, n - m)
        const overall = refineShift(old, fresh, whole, local.shift)
        for (const { shift } of [local, overall]) {
          add(shift, first, last)
          const begin = oldShots.find((frame) => Math.abs(frame - (from - shift)) <= NEAR)
          if (begin !== undefined) add(from - begin, first, last)
        }
        if (local.cost >= best) continue
        best = local.cost
        going = local.shift
      }
    }
  }
  return [...found.values()]
}

/**
 * Better shifts for stretches that were found, each by its own frames and by parts of them alone;
 * none where all are best.
 */
export const refinedRuns = (
  old: ReelLooks,
  fresh: ReelLooks,
  runs: readonly {
    readonly from: number
    readonly to: number
    readonly shift: number | undefined
  }[],
): readonly ShiftCandidate[] =>
  runs.flatMap(({ from, to, shift }) => {
    if (shift === undefined) return []
    const { first, last } = reachOf(fresh, from, to)
    const [early, late] = [from + ((to - from) >> 2), to - ((to - from) >> 2)]
    const middle = (from + to) >> 1
    return [
      [from, to],
      [early, late],
      [from, middle],
      [middle, to],
    ].flatMap(([a = from, b = to]) => {
      const better = refineShift(old, fresh, spread(a, b), shift)
      return better.shift === shift ? [] : [{ shift: better.shift, from: first, to: last }]
    })
  })
