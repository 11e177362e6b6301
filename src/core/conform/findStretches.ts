import { BLANK_BELOW, frameCost, sureness } from './frameCost.ts'
import { matchReels, type ReelMatch } from './matchReels.ts'
import type { FoundStretch } from './reconformPlan.ts'
import type { ReelPrints } from './reelPrints.ts'
import type { ShiftRun } from './shiftPath.ts'
import { meanCost, placesLike, spread } from './shiftSearch.ts'

/**
 * Frames found nowhere between two stretches of one shift are bridged: a few whatever they show,
 * more where they are still something like the old reel's, as over a change from shot to shot.
 */
const LONGEST_BRIDGE = 12
const LONGEST_LIKE = 75
const STILL_LIKE = 0.6

/** A stretch with more blank frames than this says little of where it belongs. */
const MOST_BLANK = 0.8

/** Another place is as good where what it leaves unexplained is at most this much more. */
const AS_GOOD = 0.15

/** Stretches nearer than this are parts of one shot, not another place. */
const ANOTHER_PLACE = 12

const MOST_COMPARED = 12

/** A shift is as good as another where what it leaves unexplained is at most this much more. */
const HARDLY_MORE = 0.12
const MOST_SLACK = 12

/** A run with fewer frames that show something is none, unless it is this long. */
const LEAST_SEEN = 3
const LEAST_BLANK_RUN = 24

/** Whether a gap in what one shift holds is to be bridged. */
const isBridged = ({ old, fresh }: ReelMatch, { from, to }: ShiftRun, shift: number): boolean => {
  if (to - from < LONGEST_BRIDGE) return true
  if (to - from > LONGEST_LIKE) return false
  let sum = 0
  for (let n = from; n < to; n++) sum += frameCost(old, n - shift, fresh, n)
  return sum < STILL_LIKE * (to - from)
}

/** Joins what one shift holds on both sides of frames that are found nowhere. */
const bridged = (match: ReelMatch): readonly ShiftRun[] => {
  const out: ShiftRun[] = []
  for (const run of match.runs) {
    const [before, gap] = [out.at(-2), out.at(-1)]
    const isBridge =
      before !== undefined &&
      gap !== undefined &&
      gap.shift === undefined &&
      before.shift !== undefined &&
      before.shift === run.shift &&
      isBridged(match, gap, before.shift)
    if (isBridge) {
      const frames = run.to - before.from
      const cost = [before, gap, run].reduce(
        (sum, each) => sum + each.cost * (each.to - each.from),
        0,
      )
      out.splice(-2, 2, { ...before, to: run.to, cost: cost / frames })
    } else out.push(run)
  }
  return out
}

const isBlank = ({ fresh }: ReelMatch, n: number): boolean =>
  (fresh.deviations[n] as number) < BLANK_BELOW

const blankFrames = (match: ReelMatch, { from, to }: ShiftRun): number => {
  let blank = 0
  for (let n = from; n < to; n++) if (isBlank(match, n)) blank++
  return blank
}

/** Some frames of a run, its ends among them. */
const someFrames = ({ from, to }: ShiftRun): readonly number[] => {
  const frames = spread(from, to)
  const every = Math.max(1, Math.ceil(frames.length / MOST_COMPARED))
  return frames.filter((_, k) => k % every === 0)
}

/** What speaks against a stretch being where it was found, in a sentence; '' where nothing does. */
const doubtOf = (match: ReelMatch, run: ShiftRun, shift: number): string => {
  const { from, to } = run
  if (blankFrames(match, run) > MOST_BLANK * (to - from))
    return 'It shows next to nothing, as other frames do.'
  const middle = (from + to) >> 1
  const frames = someFrames(run)
  const own = meanCost(match.old, match.fresh, frames, shift)
  const rival = placesLike(match.old, match.fresh, middle)
    .filter((m) => m < from - shift - ANOTHER_PLACE || m >= to - shift + ANOTHER_PLACE)
    .find((m) => meanCost(match.old, match.fresh, frames, middle - m) < own + AS_GOOD)
  return rival === undefined ? '' : `Its picture is as much like frame ${rival} of the old reel.`
}

/** How many frames its shift can be off and cost hardly more. */
const slackOf = (match: ReelMatch, run: ShiftRun, shift: number): number => {
  const frames = someFrames(run)
  const own = meanCost(match.old, match.fresh, frames, shift)
  const isAsGood = (by: number): boolean =>
    [shift - by, shift + by].some(
      (other) => meanCost(match.old, match.fresh, frames, other) < own + HARDLY_MORE,
    )
  let slack = 0
  while (slack < MOST_SLACK && isAsGood(slack + 1)) slack++
  return slack
}

/**
 * The stretches of a reel that are found again on a new scan or cut of it, in its order. A few
 * blank frames by themselves are not found anywhere: they are like any others.
 */
export const findStretches = (old: ReelPrints, fresh: ReelPrints): readonly FoundStretch[] => {
  const match = matchReels(old, fresh)
  return bridged(match).flatMap((run): readonly FoundStretch[] => {
    const { from, to, shift, cost } = run
    if (shift === undefined) return []
    const seen = to - from - blankFrames(match, run)
    if (seen < LEAST_SEEN && to - from < LEAST_BLANK_RUN) return []
    return [
      {
        from,
        to,
        shift,
        sure: sureness(cost),
        slack: slackOf(match, run, shift),
        doubt: doubtOf(match, run, shift),
      },
    ]
  })
}
