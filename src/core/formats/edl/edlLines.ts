import { beginsWith, keep, takeComment } from './edlComment.ts'
import { type EdlDraft, newEdlDraft } from './edlDraft.ts'
import type { EdlEvent } from './edlEvent.ts'
import { gradeComments } from './edlGrade.ts'
import { type EdlHeader, newEdlHeader, takeHeaderComment } from './edlHeader.ts'
import type { EdlProblems } from './edlProblems.ts'
import { walkEdl } from './edlWalk.ts'

const MOTION = /^M2[ \t]/iu
const SPEED = /^[+-]?\d+\.\d+$/u

const FREEZE =
  'The picture stands still here (M2 with speed 0), which a cue has not; place it by record times.'
const OTHER_SPEED = 'The speed of the picture (M2) is not taken; place the cue by record times.'

const motionWords = (said: string): string => {
  const speed = said.split(/\s+/u).find((word, i) => i > 0 && SPEED.test(word))
  return speed !== undefined && Number(speed) === 0 ? FREEZE : OTHER_SPEED
}

const isWithoutLength = ({ sourceIn, sourceOut, recordIn, recordOut }: EdlEvent): boolean =>
  sourceIn === sourceOut && recordIn === recordOut

const addBeside = (draft: EdlDraft, event: EdlEvent): void => {
  if (draft.besides) draft.besides.push(event)
  else draft.besides = [event]
}

/** The cut to the outgoing source of an effect becomes part of the effect's event. */
const takeEffect = (draft: EdlDraft, effect: EdlEvent, notTaken: EdlProblems): void => {
  if (draft.gradeLine > 0) {
    const says = 'The grade of the outgoing picture of an effect is left to its own event.'
    notTaken.add('conflict', says, draft.gradeLine)
    for (const comment of gradeComments(draft.sop, draft.saturation))
      keep(draft, 'notTaken', comment)
    draft.sop = undefined
    draft.saturation = undefined
    draft.gradeLine = 0
  }
  addBeside(draft, draft.event)
  draft.event = effect
}

const passedOver = (events: number): string =>
  events === 1
    ? 'One event has no picture and was passed over, with the comments under it.'
    : `${events} events have no picture and were passed over, with the comments under them.`

/**
 * Goes through a list whose event lines are whole, and gives each event with a picture to
 * `takeDraft` once all its lines have been read. Each comment belongs to the event line above it;
 * those above the first are the list's. What is left out is told in `notTaken`.
 */
export const readEdlLines = (
  text: string,
  notTaken: EdlProblems,
  takeDraft: (draft: EdlDraft) => void,
): EdlHeader => {
  const header = newEdlHeader()
  /** The event that comments belong to; undefined before the first, and under one passed over. */
  let draft: EdlDraft | undefined
  let hasEvents = false
  let soundOnly = 0
  let firstSound = 0

  const begin = (next: EdlDraft | undefined): void => {
    if (draft) takeDraft(draft)
    draft = next
  }

  const takeEvent = (event: EdlEvent | string, line: number): void => {
    hasEvents = true
    if (typeof event === 'string') return
    if (event.videoTrack === 0) {
      soundOnly++
      firstSound ||= line
      begin(undefined)
      return
    }
    const before = draft?.event.number === event.number ? draft : undefined
    if (event.effect === 'key') {
      notTaken.add('malformed', 'A picture keyed over another is not taken; a cue has one.', line)
      if (before) addBeside(before, event)
      else begin(undefined)
      return
    }
    if (event.effect === 'key-background')
      notTaken.add('malformed', 'The background of a key is taken as a cut to it.', line)
    if (before && event.effect !== 'cut' && isWithoutLength(before.event))
      takeEffect(before, event, notTaken)
    else begin(newEdlDraft(event))
  }

  const takeCommentOf = (said: string, line: number): void => {
    if (draft) takeComment(draft, said, line, notTaken)
    else if (!hasEvents) takeHeaderComment(header, said, line, notTaken)
  }

  const takeWords = (said: string, line: number): void => {
    if (!hasEvents && header.title === '' && beginsWith(said, 'TITLE:')) {
      header.title = said.slice('TITLE:'.length).trim()
      return
    }
    if (beginsWith(said, 'FCM:'))
      notTaken.add(
        'malformed',
        'FCM says neither DROP FRAME nor NON-DROP FRAME; it was left.',
        line,
      )
    if (draft && MOTION.test(said)) {
      draft.hasMotion = true
      notTaken.add('malformed', motionWords(said), line)
    }
    // Words of values count here as well: some lists leave out the asterisk.
    takeCommentOf(said, line)
  }

  walkEdl(text, {
    takeEvent,
    takeComment: (from, to, line) => takeCommentOf(text.slice(from, to), line),
    takeWords,
  })
  begin(undefined)
  if (soundOnly > 0) notTaken.add('malformed', passedOver(soundOnly), firstSound)
  return header
}
