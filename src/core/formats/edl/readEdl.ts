import { problem } from '../../base/problem.ts'
import { fail, type Result, resultOf } from '../../base/result.ts'
import type { Decision, DecisionList, ListTiming, Span } from '../decisionList.ts'
import { chooseCounting, type EdlCounting, fittingRates } from './edlCounting.ts'
import { edlDecision } from './edlDecision.ts'
import type { EdlDraft } from './edlDraft.ts'
import { foreignOfHeader } from './edlHeader.ts'
import { readEdlLines } from './edlLines.ts'
import { createEdlProblems, type EdlProblems } from './edlProblems.ts'
import { spanOf } from './edlSpan.ts'
import { type EdlSurvey, surveyEdl } from './edlSurvey.ts'
import { withLineFeeds } from './edlWalk.ts'

/** Characters of a list: many times what a reel of a job can hold. */
export const MOST_CHARACTERS = 64 * 2 ** 20

const lengthOf = ({ from, to }: Span): number => to - from

const isSameSpan = (a: Span, b: Span): boolean => a.from === b.from && a.to === b.to

/** Makes decisions of events; labels without a count go to `refusals`. */
const decisionMaker = (
  seen: EdlSurvey,
  counting: EdlCounting,
  refusals: EdlProblems,
  notTaken: EdlProblems,
): ((draft: EdlDraft) => Decision | undefined) => {
  const fitting = fittingRates(seen)
  return (draft) => {
    const { event } = draft
    const source = spanOf(event.sourceIn, event.sourceOut, event, counting, fitting)
    const record = spanOf(event.recordIn, event.recordOut, event, counting, fitting)
    if (typeof source === 'string') refusals.add('out-of-range', source, event.line)
    if (typeof record === 'string') refusals.add('out-of-range', record, event.line)
    if (typeof source === 'string' || typeof record === 'string') return undefined
    if (event.videoTrack > seen.lowestTrack) {
      const says = `A picture on track V${event.videoTrack}, above V${seen.lowestTrack}, was passed over: a cue has one picture.`
      notTaken.add('conflict', says, event.line)
      return undefined
    }
    if (lengthOf(record) === 0) {
      notTaken.add('out-of-range', 'This event has no frames and was passed over.', event.line)
      return undefined
    }
    if (event.effect === 'cut' && !draft.hasMotion && lengthOf(source) !== lengthOf(record)) {
      const says = `The source has ${lengthOf(source)} frames and the record ${lengthOf(record)}, without an M2 line that says why; both were taken as they are.`
      notTaken.add('conflict', says, event.line)
    }
    return edlDecision(draft, source, isSameSpan(source, record) ? source : record, notTaken)
  }
}

/**
 * Reads an edit decision list: conventional event lines and the comments under them (facts/edl.md
 * §1–3). One decision an event with a picture; a dissolve or wipe of two lines is one. Spans are
 * frames from 00:00:00:00 at the list's rate; an event over midnight ends past the day's count.
 * `timing` says how labels are counted, and FCM lines and drop-frame punctuation go before it; of
 * a list without one the lowest usual rate is taken that all labels fit.
 *
 * Any broken event line, and any label that the count has not, refuses the whole list: each such
 * line is named. Sound, keys, speeds and grades out of range are told in `notTaken`; of such an
 * event the rest is read. Everything else that a cue has no field for is in `foreign`
 * (`EdlForeign`). At most 64 Mi characters and 1,000,000 events.
 */
export const readEdl = (original: string, timing: ListTiming | undefined): Result<DecisionList> => {
  if (original.length > MOST_CHARACTERS) {
    const says = 'An edit decision list of over 64 MB is not read; split it.'
    return fail(problem('too-large', says, { byte: MOST_CHARACTERS }))
  }
  const text = withLineFeeds(original)
  const refusals = createEdlProblems()
  const seen = surveyEdl(text, refusals)
  const [refusal, ...more] = refusals.told()
  if (refusal) return fail(refusal, ...more)
  const counting = chooseCounting(seen, timing)
  if (!counting.ok) return counting
  const notTaken = createEdlProblems()
  if (seen.markedNonDrop) {
    const says =
      'Labels here have drop-frame punctuation under FCM: NON-DROP FRAME; such labels were counted as drop-frame.'
    notTaken.add('conflict', says, seen.markedNonDrop.line)
  }
  const decisions: Decision[] = []
  const toDecision = decisionMaker(seen, counting.value, refusals, notTaken)
  const header = readEdlLines(text, notTaken, (draft) => {
    const decision = toDecision(draft)
    if (decision) decisions.push(decision)
  })
  const { rate, isDropFrame } = counting.value
  const list: DecisionList = {
    format: 'edl',
    title: header.title,
    rate,
    ...(isDropFrame === undefined ? {} : { isDropFrame }),
    decisions,
    foreign: foreignOfHeader(header, notTaken),
    notTaken: notTaken.told(),
  }
  return resultOf(list, refusals.told())
}
