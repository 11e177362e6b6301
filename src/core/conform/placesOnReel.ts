import type { Decision, DecisionList, Span } from '../formats/decisionList.ts'
import type { Reel } from '../job/job.ts'
import { nominalFramesPerSecond, sameRate } from '../time/rate.ts'
import { canDropFrames, formatTimecode, framesPerDay, parseTimecode } from '../time/timecode.ts'

type Counting = Pick<Reel, 'rate' | 'startCount' | 'isDropFrame'>

/** How the frames of a list's times are counted on a reel. */
export type ListClock = {
  /** The count, as the list counts, of the reel's first frame. */
  readonly origin: number
  /** Frames after which the list's count begins again. */
  readonly day: number
}

/**
 * The clock of a list on a reel. Where the list counts otherwise, at another rate or in dropping
 * frames, the label of the reel's first frame is the same in both, and from there on a frame is a
 * frame. A first label that the list's count leaves out is taken for the next that it has.
 */
export const listClock = (
  reel: Counting,
  list: Pick<DecisionList, 'rate' | 'isDropFrame'>,
): ListClock => {
  const rate = list.rate ?? reel.rate
  const drops = (list.isDropFrame ?? reel.isDropFrame) && canDropFrames(rate)
  const reelDrops = reel.isDropFrame && canDropFrames(reel.rate)
  if (sameRate(rate, reel.rate) && drops === reelDrops)
    return { origin: reel.startCount, day: framesPerDay(rate, drops) }
  const day = framesPerDay(rate, drops)
  const label = formatTimecode(reel.startCount, reel.rate, reel.isDropFrame).replace(';', ':')
  const frames = Math.min(Number(label.slice(9)), nominalFramesPerSecond(rate) - 1)
  const known = (at: number): string => `${label.slice(0, 9)}${String(at).padStart(2, '0')}`
  const here = parseTimecode(known(frames), rate, drops)
  const origin = here.ok
    ? here
    : parseTimecode(known(nominalFramesPerSecond(rate) / 15), rate, drops)
  return { origin: origin.ok ? origin.value : reel.startCount, day }
}

/** Frames from `from` to `to`, the shorter way round a day. */
const apart = (from: number, to: number, day: number): number => {
  const steps = (((to - from) % day) + day) % day
  return steps >= day / 2 ? steps - day : steps
}

/** The times of a decision that count. */
export const spanOf = (decision: Decision, times: 'record' | 'source'): Span | undefined =>
  times === 'record' ? decision.recordSpan : decision.sourceSpan

/**
 * Where a decision's times lie on the reel, as frames from its first, which may be outside it;
 * `startsAt` moves all so that the list's first times begin there. The end is not before the
 * beginning unless the list says so.
 */
export const placeSpan = (
  list: DecisionList,
  reel: Counting,
  times: 'record' | 'source',
  startsAt: number | null,
): ((decision: Decision) => Span | undefined) => {
  const { origin, day } = listClock(reel, list)
  const zero = list.decisions
    .map((each) => spanOf(each, times)?.from)
    .find((from) => from !== undefined)
  return (decision) => {
    const span = spanOf(decision, times)
    if (!span) return undefined
    const from =
      startsAt === null || zero === undefined
        ? apart(origin, span.from, day)
        : startsAt + apart(zero, span.from, day)
    return {
      from,
      to: from + (span.to >= span.from ? span.to - span.from : span.to - span.from + day),
    }
  }
}
