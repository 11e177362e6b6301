import type { Grade } from '../../colour/grade.ts'
import { NOTE_LIMIT } from '../../job/commands/setNote.ts'
import type { Foreign } from '../../job/job.ts'
import { CUE_FOREIGN_LIMIT } from '../../job/limits.ts'
import type { Decision, DecisionValues, Span, Transition } from '../decisionList.ts'
import { keep } from './edlComment.ts'
import type { EdlDraft } from './edlDraft.ts'
import type { EdlEvent } from './edlEvent.ts'
import { type EdlForeign, edlForeignText } from './edlForeign.ts'
import { edlGrade, gradeComments } from './edlGrade.ts'
import type { EdlProblems } from './edlProblems.ts'

const CUT: Transition = { kind: 'cut', frames: 0 }

const transitionOf = ({ effect, frames }: EdlEvent): Transition => {
  if (effect === 'cut') return CUT
  return { kind: effect === 'dissolve' || effect === 'wipe' ? effect : 'other', frames }
}

const isLetterOrDigit = (code: number): boolean =>
  (code >= 48 && code <= 57) || (code >= 65 && code <= 90)

/** Whether a reel's short name is how the full one begins, in letters and digits. */
const isShortFor = (short: string, full: string): boolean => {
  const [few, many] = [short.toUpperCase(), full.toUpperCase()]
  let at = 0
  for (let i = 0; i < few.length; i++) {
    const code = few.charCodeAt(i)
    if (!isLetterOrDigit(code)) continue
    while (at < many.length && !isLetterOrDigit(many.charCodeAt(at))) at++
    if (many.charCodeAt(at) !== code) return false
    at++
  }
  return at > 0
}

/**
 * The name the picture's source is best known by: the full one that a comment states, if the
 * reel's name is short for it, or is AX, which names no reel.
 */
const sourceOf = ({ event, sourceFile, reelName }: EdlDraft): string => {
  if (reelName !== '') return reelName
  if (sourceFile === '') return event.reel
  return event.reel === 'AX' || isShortFor(event.reel, sourceFile) ? sourceFile : event.reel
}

/** The clip that comes in: of two named, the second. An effect's one clip may be the outgoing. */
const nameOf = ({ event, fromClip, toClip }: EdlDraft): string =>
  event.effect === 'dissolve' || event.effect === 'wipe' ? toClip : fromClip

const OWN_NAME = / CUE \d{4,}$/u

/** Whether its clip name is one of our own lists: the reel's and the number of a cue. */
const hasOwnName = ({ event, fromClip, reelName }: EdlDraft): boolean =>
  OWN_NAME.test(fromClip) &&
  (reelName || event.reel).startsWith(fromClip.slice(0, fromClip.lastIndexOf(' CUE ')))

/** An event as our own lists have them: nothing of its line need be kept. */
const isOwn = (draft: EdlDraft): boolean => {
  const { event, earlier, besides } = draft
  return (
    !besides &&
    event.effect === 'cut' &&
    event.sourceIn === event.recordIn &&
    event.sourceOut === event.recordOut &&
    (earlier !== undefined || hasOwnName(draft))
  )
}

const textsOf = ({ event, besides }: EdlDraft): string[] => {
  if (!besides) return [event.text]
  return [...besides, event].sort((a, b) => a.line - b.line).map(({ text }) => text)
}

/** The clip name that is not the decision's, as a comment that no reader takes for its name. */
const otherName = ({ fromClip, toClip }: EdlDraft, name: string): string => {
  if (name === fromClip) return toClip === '' ? '' : `TO CLIP NAME: ${toClip}`
  if (fromClip === '') return ''
  return `${name === '' ? 'CLIP NAME' : 'OUTGOING CLIP NAME'}: ${fromClip}`
}

const NOTHING: Foreign = []

const foreignOf = (draft: EdlDraft, name: string, notTaken: EdlProblems): Foreign => {
  const hasOwn = isOwn(draft)
  const other = otherName(draft, name)
  const kept: { -readonly [Key in keyof EdlForeign]: EdlForeign[Key] } = {}
  if (name !== '' && !(hasOwn && hasOwnName(draft))) kept.name = name
  const events = hasOwn ? draft.earlier : textsOf(draft)
  if (events) kept.events = events
  const comments = other === '' ? draft.comments : [other, ...(draft.comments ?? [])]
  if (comments) kept.comments = comments
  if (draft.notTaken) kept.notTaken = draft.notTaken
  const text = edlForeignText(kept)
  if (text === '') return NOTHING
  if (text.length <= CUE_FOREIGN_LIMIT) return [{ format: 'edl', text }]
  notTaken.add(
    'too-large',
    `Comments of an event are kept up to ${CUE_FOREIGN_LIMIT} characters; these are more and were left.`,
    draft.event.line,
  )
  return NOTHING
}

/** The grade of its comments; one that a job cannot hold is told, and kept as comments again. */
const gradeOf = (draft: EdlDraft, notTaken: EdlProblems): Grade | undefined => {
  if (draft.gradeLine === 0) return undefined
  const grade = edlGrade(draft.sop, draft.saturation)
  if (grade.ok) return grade.value
  for (const { code, says } of grade.problems) notTaken.add(code, says, draft.gradeLine)
  for (const comment of gradeComments(draft.sop, draft.saturation)) keep(draft, 'notTaken', comment)
  return undefined
}

const noteOf = (draft: EdlDraft, notTaken: EdlProblems): string => {
  const note = draft.note?.trim() ?? ''
  if (note.length <= NOTE_LIMIT) return note
  const says = `A note holds at most ${NOTE_LIMIT} characters; this one was left.`
  notTaken.add('too-large', says, draft.event.line)
  keep(draft, 'notTaken', `NOTE: ${note}`)
  return ''
}

const NO_VALUES: DecisionValues = {}

const valuesOf = (draft: EdlDraft, notTaken: EdlProblems): DecisionValues => {
  const { ramp, rampShape, gradeLine } = draft
  if (gradeLine === 0 && ramp === undefined && draft.note === undefined) return NO_VALUES
  const grade = gradeOf(draft, notTaken)
  const note = noteOf(draft, notTaken)
  const values: { -readonly [Key in keyof DecisionValues]: DecisionValues[Key] } = {}
  if (grade) values.grade = grade
  if (ramp !== undefined) {
    values.ramp = ramp
    values.rampShape = rampShape
  }
  if (note !== '') values.note = note
  return values
}

/** An event whose times are counted, as a decision; what cannot be taken goes to `notTaken`. */
export const edlDecision = (
  draft: EdlDraft,
  sourceSpan: Span,
  recordSpan: Span,
  notTaken: EdlProblems,
): Decision => {
  const { event, besides } = draft
  const values = valuesOf(draft, notTaken)
  const name = nameOf(draft)
  return {
    name,
    source: sourceOf(draft),
    sourceSpan,
    recordSpan,
    transition: transitionOf(event),
    values,
    line: Math.min(event.line, besides?.[0]?.line ?? event.line),
    foreign: foreignOf(draft, name, notTaken),
  }
}
