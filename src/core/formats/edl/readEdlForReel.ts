import { problem } from '../../base/problem.ts'
import { ok, type Result } from '../../base/result.ts'
import { nominalFramesPerSecond, type Rate, sameRate } from '../../time/rate.ts'
import type { DecisionList, ListTiming, Span } from '../decisionList.ts'
import { chooseCounting, type EdlCounting, ratesFor, rateWords } from './edlCounting.ts'
import type { EdlDraft } from './edlDraft.ts'
import { readEdlLines } from './edlLines.ts'
import { createEdlProblems } from './edlProblems.ts'
import { spanOf } from './edlSpan.ts'
import { type EdlSurvey, surveyEdl } from './edlSurvey.ts'
import { withLineFeeds } from './edlWalk.ts'
import { MOST_CHARACTERS, readEdl } from './readEdl.ts'

const STATES_RATE = /FRAME RATE:/iu

const isUneven = (source: Span, record: Span): boolean =>
  source.to - source.from !== record.to - record.from

const cuts = (count: number): string =>
  count === 0 ? 'no cut' : `${count} ${count === 1 ? 'cut' : 'cuts'}`

/** A rate a list may have been made at, and how it fits. */
type Candidate = {
  readonly rate: Rate
  readonly counting: EdlCounting
  /** Whether the count lacks a label, or an out is before its in. */
  isRefused: boolean
  /** Cuts whose source and record are of different length, without a line that says why. */
  misfits: number
}

const candidateOf = (timing: ListTiming, seen: EdlSurvey): readonly Candidate[] => {
  const counting = chooseCounting(seen, timing)
  return counting.ok
    ? [{ rate: timing.rate, counting: counting.value, isRefused: false, misfits: 0 }]
    : []
}

/** Looks at an event at a candidate's rate. */
const tryEvent = (candidate: Candidate, { event, hasMotion }: EdlDraft): void => {
  const { counting, isRefused } = candidate
  if (isRefused) return
  const source = spanOf(event.sourceIn, event.sourceOut, event, counting, '')
  const record = spanOf(event.recordIn, event.recordOut, event, counting, '')
  if (typeof source === 'string' || typeof record === 'string') candidate.isRefused = true
  else if (event.effect === 'cut' && !hasMotion && isUneven(source, record)) candidate.misfits++
}

/** The reel's rate, if the list fits it, and the usual rates that it fits, the best first. */
const fittingCandidates = (text: string, seen: EdlSurvey, timing: ListTiming) => {
  const own = candidateOf(timing, seen)
  const usual = ratesFor(seen).flatMap((rate) => candidateOf({ rate, isDropFrame: false }, seen))
  readEdlLines(text, createEdlProblems(), (draft) => {
    if (draft.event.videoTrack > seen.lowestTrack) return
    for (const candidate of [...own, ...usual]) tryEvent(candidate, draft)
  })
  const nominal = nominalFramesPerSecond(timing.rate)
  const otherCount = ({ rate }: Candidate): number =>
    nominalFramesPerSecond(rate) === nominal ? 0 : 1
  return {
    own: own.find(({ isRefused }) => !isRefused),
    best: usual
      .filter(({ isRefused }) => !isRefused)
      .sort((a, b) => a.misfits - b.misfits || otherCount(a) - otherCount(b))[0],
  }
}

/** The list read at another rate than the reel's, and told why. */
const readAt = (text: string, rate: Rate, why: string): Result<DecisionList> => {
  const read = readEdl(text, { rate, isDropFrame: false })
  if (!read.ok) return read
  const told = problem('conflict', why, { line: read.value.decisions[0]?.line ?? 1 })
  return ok({ ...read.value, notTaken: [told, ...read.value.notTaken] })
}

/** The list at the rate that fits it best, where the reel's does not fit all of it. */
const readElsewhere = (
  original: string,
  timing: ListTiming,
  read: Result<DecisionList>,
): Result<DecisionList> => {
  const text = withLineFeeds(original)
  const seen = surveyEdl(text, createEdlProblems())
  const { own, best } = fittingCandidates(text, seen, timing)
  if (!best) return read
  const [reelWords, words] = [rateWords(timing.rate), rateWords(best.rate)]
  if (!read.ok || !own) {
    const why = `Its labels and lengths fit ${words} frames a second, not the ${reelWords} of the reel; it was read at ${words}.`
    const elsewhere = readAt(original, best.rate, why)
    return elsewhere.ok ? elsewhere : read
  }
  if (best.misfits >= own.misfits) return read
  const why = `Its labels and lengths fit ${words} frames a second, with ${cuts(best.misfits)} of different length in source and record, not the ${reelWords} of the reel, with ${cuts(own.misfits)}; it was read at ${words}.`
  return readAt(original, best.rate, why)
}

/** The rate that a list of ours states. */
const ownRate = (text: string): Rate | undefined =>
  text.length <= MOST_CHARACTERS && STATES_RATE.test(text)
    ? surveyEdl(withLineFeeds(text), createEdlProblems()).statedRate
    : undefined

/**
 * `readEdl` for a reel, whose rate the list need not have. A rate that a list of ours states wins.
 * Else the labels are counted at the reel's rate, unless they do not fit it, or another usual rate
 * (24, 25, 30, 50, 60; of drop-frame labels 30000/1001, 60000/1001) leaves fewer cuts with source
 * and record of different length: then at the rate that leaves the fewest, which is told.
 */
export const readEdlForReel = (text: string, timing: ListTiming): Result<DecisionList> => {
  const stated = ownRate(text)
  if (stated && !sameRate(stated, timing.rate)) {
    const own = readEdl(text, { rate: stated, isDropFrame: false })
    if (own.ok) return own
  }
  const read = readEdl(text, timing)
  if (stated && sameRate(stated, timing.rate)) return read
  const isFitting = read.ok
    ? !read.value.decisions.some(
        ({ transition, sourceSpan, recordSpan }) =>
          transition.kind === 'cut' && sourceSpan && recordSpan && isUneven(sourceSpan, recordSpan),
      )
    : read.problems[0].code !== 'out-of-range'
  return isFitting ? read : readElsewhere(text, timing, read)
}
