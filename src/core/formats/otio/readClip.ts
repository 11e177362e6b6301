import { type JsonNode, memberOf, stringOf } from '../../base/json/jsonNode.ts'
import type { Foreign } from '../../job/job.ts'
import { CUE_FOREIGN_LIMIT } from '../../job/limits.ts'
import type { Rate } from '../../time/rate.ts'
import type { Decision, Span, Transition } from '../decisionList.ts'
import { isDisabled } from './chooseTrack.ts'
import { readClipGrade } from './clipGrade.ts'
import { clipRangeNode, clipSource } from './clipMedia.ts'
import { keptOfClip } from './keptOtio.ts'
import type { LaidClip } from './laidClips.ts'
import { nameOf, quoted } from './otioSchema.ts'
import type { Telling } from './otioTelling.ts'
import { readRange, timeInFrames, wholeFrames } from './otioTime.ts'
import { readOwn } from './ownMetadata.ts'
import { transitionTimes } from './transitionTimes.ts'

/** A clip to be read, and what it is read with. */
export type ClipReading = {
  readonly laid: LaidClip
  readonly next: LaidClip | undefined
  /** What stands after it and belongs to no clip. */
  readonly after: readonly JsonNode[]
  /** Where the list's time begins, in frames; undefined where its clips have no order in time. */
  readonly start: number | undefined
  readonly frameRate: Rate
  readonly telling: Telling
}

const spanOf = (from: number | undefined, to: number | undefined): Span | undefined => {
  const [first, end] = [wholeFrames(from), wholeFrames(to)]
  return first === undefined || end === undefined ? undefined : { from: first, to: end }
}

/** Frames by which the transition into a clip begins before it. */
const leadOf = ({ transition }: LaidClip, frameRate: Rate): number =>
  transitionTimes(transition, frameRate)?.lead ?? 0

/**
 * How far a clip's beginning and end are moved: it begins on the first frame of the transition into
 * it, where the transition out of it begins it ends.
 */
const movedBy = ({ laid, next, frameRate }: ClipReading): readonly [number, number] => {
  const end = next?.from === undefined ? undefined : next.from - leadOf(next, frameRate)
  const early = laid.to === undefined || end === undefined ? 0 : Math.max(0, laid.to - end)
  return [-leadOf(laid, frameRate), -early]
}

const recordSpan = (reading: ClipReading): Span | undefined => {
  const { laid, start, telling } = reading
  const { clip, from, to } = laid
  if (start === undefined || from === undefined || to === undefined) return undefined
  const [begins, ends] = movedBy(reading)
  const span = spanOf(start + from + begins, start + to + ends)
  if (!span)
    telling.tell(
      'out-of-range',
      `${quoted(clip)} begins or ends between two frames of the list’s rate; its place in the programme is not taken.`,
      clip,
    )
  return span
}

const sourceSpan = (reading: ClipReading): Span | undefined => {
  const { laid, frameRate, telling } = reading
  const { clip, from, to, head } = laid
  const range = readRange(clipRangeNode(clip))
  if (!range) return undefined
  const first = timeInFrames(range.start, frameRate) + head
  const whole = timeInFrames(range.duration, frameRate) - head
  const length = from === undefined || to === undefined ? whole : to - from
  const [begins, ends] = movedBy(reading)
  const span = spanOf(first + begins, first + length + ends)
  if (!span)
    telling.tell(
      'out-of-range',
      `${quoted(clip)} begins or ends between two frames on its source; its place there is not taken.`,
      clip,
    )
  return span
}

const kindOf = (type: string): Transition['kind'] => {
  if (type === 'SMPTE_Dissolve') return 'dissolve'
  return /wipe/iu.test(type) ? 'wipe' : 'other'
}

/** The transition into a clip; its frames are those before and after the cut together. */
const transitionOf = ({ laid, frameRate, telling }: ClipReading): Transition => {
  const { transition } = laid
  if (!transition) return { kind: 'cut', frames: 0 }
  const frames = transitionTimes(transition, frameRate)?.frames
  if (frames !== undefined)
    return { kind: kindOf(stringOf(memberOf(transition, 'transition_type')) ?? ''), frames }
  telling.tell(
    'malformed',
    `${quoted(transition)} does not last a whole number of frames; it is taken for a cut.`,
    transition,
  )
  return { kind: 'cut', frames: 0 }
}

const foreignOfClip = ({ laid, after, telling }: ClipReading, hasGrade: boolean): Foreign => {
  const text = keptOfClip(laid.clip, laid.before, after, hasGrade)
  if (text === undefined) return []
  if (text.length <= CUE_FOREIGN_LIMIT) return [{ format: 'otio', text }]
  telling.tell(
    'too-large',
    `What else is said of ${quoted(laid.clip).replace(/^./u, (letter) => letter.toLowerCase())} is more than ${CUE_FOREIGN_LIMIT} characters, and is not kept.`,
    laid.clip,
  )
  return []
}

/** A clip as a decision; what of it is not taken is told. */
export const readClip = (reading: ClipReading): Decision => {
  const { telling, laid } = reading
  const { clip } = laid
  const { grade: ownGrade, ...own } = readOwn(clip, telling)
  const grade = readClipGrade(clip, ownGrade, telling)
  if (isDisabled(clip))
    telling.tell(
      'not-stated',
      `${quoted(clip)} is switched off in the list, and is taken all the same.`,
      clip,
    )
  return {
    name: nameOf(clip),
    source: clipSource(clip),
    sourceSpan: sourceSpan(reading),
    recordSpan: recordSpan(reading),
    transition: transitionOf(reading),
    values: grade ? { ...own, grade } : own,
    line: telling.lineOf(clip),
    foreign: foreignOfClip(reading, grade !== undefined),
  }
}
