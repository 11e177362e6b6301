import type { Rate } from '../../time/rate.ts'
import type { EdlEvent } from './edlEvent.ts'
import { statedRate } from './edlHeader.ts'
import { hasDropMark, labelFrames } from './edlLabel.ts'
import type { EdlProblems } from './edlProblems.ts'
import { walkEdl } from './edlWalk.ts'

/** What must be known of a list as a whole before any of its events can be counted. */
export type EdlSurvey = {
  /** Event lines of any kind. */
  events: number
  /** The rate that a comment above the first event states. */
  statedRate: Rate | undefined
  /** The lowest picture track; infinite where there is none. */
  lowestTrack: number
  /** The highest number of frames of a label, and an event that has it. */
  highest: number
  highestIn: EdlEvent | undefined
  /** The first event with drop-frame punctuation, and the first that an FCM line says drops. */
  marked: EdlEvent | undefined
  dropMode: EdlEvent | undefined
  /** The first that an FCM line says drops none. */
  nonDropMode: EdlEvent | undefined
  /** The first with that punctuation where an FCM line says that no frames are dropped. */
  markedNonDrop: EdlEvent | undefined
}

/** Most events of a list, of any kind. */
export const MOST_EVENTS = 1_000_000

const seeEvent = (seen: EdlSurvey, event: EdlEvent): void => {
  const { sourceIn, sourceOut, recordIn, recordOut, mode } = event
  if (event.effect !== 'key') seen.lowestTrack = Math.min(seen.lowestTrack, event.videoTrack)
  const highest = Math.max(
    labelFrames(sourceIn),
    labelFrames(sourceOut),
    labelFrames(recordIn),
    labelFrames(recordOut),
  )
  if (highest > seen.highest || !seen.highestIn) {
    seen.highest = highest
    seen.highestIn = event
  }
  if (mode === 'drop') seen.dropMode ??= event
  if (mode === 'non-drop') seen.nonDropMode ??= event
  const isMarked =
    hasDropMark(sourceIn) ||
    hasDropMark(sourceOut) ||
    hasDropMark(recordIn) ||
    hasDropMark(recordOut)
  if (!isMarked) return
  seen.marked ??= event
  if (mode === 'non-drop') seen.markedNonDrop ??= event
}

const FOUR_TIMES = /(?:\d{1,2}:\d\d:\d\d[:;.,]\d{2,3}\s*){4}$/u

/** Goes through the event lines of a list. Each broken one is told in `refusals`. */
export const surveyEdl = (text: string, refusals: EdlProblems): EdlSurvey => {
  const seen: EdlSurvey = {
    events: 0,
    statedRate: undefined,
    lowestTrack: Number.POSITIVE_INFINITY,
    highest: 0,
    highestIn: undefined,
    marked: undefined,
    dropMode: undefined,
    nonDropMode: undefined,
    markedNonDrop: undefined,
  }
  walkEdl(text, {
    takeComment: (from, to) => {
      if (seen.events === 0) seen.statedRate ??= statedRate(text.slice(from, to))
    },
    takeEvent: (event, line) => {
      seen.events++
      if (seen.events === MOST_EVENTS + 1)
        refusals.add('too-large', `A list has at most ${MOST_EVENTS} events; split it.`, line)
      if (typeof event === 'string') refusals.add('malformed', event, line)
      else if (event.videoTrack > 0) seeEvent(seen, event)
    },
    takeWords: (said, line) => {
      if (!FOUR_TIMES.test(said)) return
      const says =
        'This line ends in four times like an event, but does not begin with its number; correct it, or put * before a comment.'
      refusals.add('malformed', says, line)
    },
  })
  if (seen.events === 0) {
    const says =
      'There is no event line (number, reel, track, transition, four times); this is no edit decision list.'
    refusals.add('unknown-format', says, 1)
  }
  return seen
}
