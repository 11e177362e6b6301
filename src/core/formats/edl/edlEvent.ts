import { type EdlLabel, readEdlLabel } from './edlLabel.ts'

/** What an event line says of how its picture comes in. */
export type EdlEffect = 'cut' | 'dissolve' | 'wipe' | 'key-background' | 'key'

/** What `FCM` lines say of the counting of the events after them. */
export type CountingMode = 'drop' | 'non-drop'

/** An event line, read. Its times are labels: their count depends on the list's rate. */
export type EdlEvent = {
  readonly line: number
  /** The line itself, without blanks around it. */
  readonly text: string
  readonly number: number
  readonly reel: string
  /** Track of the picture, from 1; 0 where the event has sound only, or nothing. */
  readonly videoTrack: number
  readonly effect: EdlEffect
  /** Frames of the effect; 0 for a cut. */
  readonly frames: number
  readonly sourceIn: EdlLabel
  readonly sourceOut: EdlLabel
  readonly recordIn: EdlLabel
  readonly recordOut: EdlLabel
  /** The counting mode in force; undefined where the list has said none. */
  readonly mode: CountingMode | undefined
}

const isBlank = (code: number): boolean => code === 32 || code === 9

/** Where the word that ends at `end` begins. */
const wordStart = (text: string, from: number, end: number): number => {
  let at = end
  while (at > from && !isBlank(text.charCodeAt(at - 1))) at--
  return at
}

/** Where the word before the one that begins at `start` ends. */
const wordEnd = (text: string, from: number, start: number): number => {
  let at = start
  while (at > from && isBlank(text.charCodeAt(at - 1))) at--
  return at
}

/** Characters of most labels: those of `hh:mm:ss:ff`. */
const LABEL_LENGTH = 11

const labelStart = (text: string, from: number, end: number): number =>
  isBlank(text.charCodeAt(end - LABEL_LENGTH - 1)) && end - LABEL_LENGTH > from
    ? end - LABEL_LENGTH
    : wordStart(text, from, end)

const isDigit = (code: number): boolean => code >= 48 && code <= 57

const isDigits = (text: string, from: number, to: number): boolean => {
  for (let i = from; i < to; i++) if (!isDigit(text.charCodeAt(i))) return false
  return to > from
}

/** The picture's track of a word such as `V`, `AA/V`, `B` or `V2`; undefined for no track at all. */
const videoTrackOf = (word: string): number | undefined => {
  if (word === 'V' || word === 'B') return 1
  const track = word.toUpperCase()
  if (track === 'NONE') return 0
  if (!/^[VAB][VAB0-9/+&,]*$/u.test(track)) return undefined
  const video = /V(\d{0,3})/u.exec(track)
  if (!video) return track.includes('B') ? 1 : 0
  return video[1] ? Math.max(1, Number(video[1])) : 1
}

const EFFECTS: Readonly<Record<string, EdlEffect>> = {
  C: 'cut',
  D: 'dissolve',
  K: 'key',
  KB: 'key-background',
  KO: 'key',
}

const effectOf = (word: string): EdlEffect | undefined => {
  if (word === 'C') return 'cut'
  const code = word.toUpperCase()
  if (Object.hasOwn(EFFECTS, code)) return EFFECTS[code]
  return /^W\d*$/u.test(code) ? 'wipe' : undefined
}

const FORM = 'number, reel, track, transition, its duration, and four times'

/** Of a long word as much as tells which it is. */
const quoted = (word: string): string => `“${word.length > 40 ? `${word.slice(0, 40)}…` : word}”`

/** Digits of the most frames an effect can have. */
const MOST_FRAME_DIGITS = 6

/** Part of a time: within a reel's name it tells that two lines have run into one. */
const TIME = /\d:\d\d:\d\d/u

/** What is wrong with the fields of an event line, from its right end. */
const wrongTimes = (text: string): string => {
  const words = text.split(/[ \t]+/u)
  if (words.length < 8)
    return `An event line has ${FORM}; this one has only ${words.length} fields, complete it.`
  const bad = words.slice(-4).find((word) => readEdlLabel(word, 0, word.length) === undefined)
  return `${quoted(bad ?? '')} is not a timecode; an event line ends in four, such as 01:00:04:05.`
}

/**
 * The event line from `from` up to `to` (facts/edl.md §1): number, reel, track, transition, frames
 * of a dissolve, wipe or key, and four labels, parted by blanks. It is read from its end, since a
 * reel's name may have blanks. Else what is wrong with it, as a sentence.
 */
export const readEdlEvent = (
  text: string,
  from: number,
  to: number,
  line: number,
  mode: CountingMode | undefined,
): EdlEvent | string => {
  const recordOutAt = labelStart(text, from, to)
  const recordOut = readEdlLabel(text, recordOutAt, to)
  const recordInEnd = wordEnd(text, from, recordOutAt)
  const recordInAt = labelStart(text, from, recordInEnd)
  const recordIn = readEdlLabel(text, recordInAt, recordInEnd)
  const sourceOutEnd = wordEnd(text, from, recordInAt)
  const sourceOutAt = labelStart(text, from, sourceOutEnd)
  const sourceOut = readEdlLabel(text, sourceOutAt, sourceOutEnd)
  const sourceInEnd = wordEnd(text, from, sourceOutAt)
  const sourceInAt = labelStart(text, from, sourceInEnd)
  const sourceIn = readEdlLabel(text, sourceInAt, sourceInEnd)
  if (
    sourceIn === undefined ||
    sourceOut === undefined ||
    recordIn === undefined ||
    recordOut === undefined
  )
    return wrongTimes(text.slice(from, to))
  let effectEnd = wordEnd(text, from, sourceInAt)
  let effectAt = wordStart(text, from, effectEnd)
  let duration = -1
  if (isDigits(text, effectAt, effectEnd)) {
    if (effectEnd - effectAt > MOST_FRAME_DIGITS)
      return `The duration ${quoted(text.slice(effectAt, effectEnd))} has more digits than a transition has frames; correct it.`
    duration = Number(text.slice(effectAt, effectEnd))
    effectEnd = wordEnd(text, from, effectAt)
    effectAt = wordStart(text, from, effectEnd)
  }
  let word = text.slice(effectAt, effectEnd)
  let trackEnd = wordEnd(text, from, effectAt)
  let trackAt = wordStart(text, from, trackEnd)
  let track = text.slice(trackAt, trackEnd)
  if (track === 'K' || track === 'k') {
    word = `K${word}`
    trackEnd = wordEnd(text, from, trackAt)
    trackAt = wordStart(text, from, trackEnd)
    track = text.slice(trackAt, trackEnd)
  }
  const effect = effectOf(word)
  if (!effect)
    return `${quoted(word)} is not a transition; write C, D, W and the number of a wipe, or K.`
  const videoTrack = videoTrackOf(track)
  const reelEnd = wordEnd(text, from, trackAt)
  let reelAt = from
  let number = 0
  for (; isDigit(text.charCodeAt(reelAt)); reelAt++)
    number = number * 10 + text.charCodeAt(reelAt) - 48
  while (isBlank(text.charCodeAt(reelAt))) reelAt++
  if (videoTrack === undefined || reelAt >= reelEnd)
    return `${quoted(track)} is not a track after a reel's name; an event line has ${FORM}.`
  const reel = text.slice(reelAt, reelEnd)
  if (reel.length > LABEL_LENGTH && TIME.test(reel))
    return 'An event line has four times and this one has more; put each event on a line of its own.'
  if (duration < 0 && (effect === 'dissolve' || effect === 'wipe'))
    return `A ${effect} needs its duration in frames after “${word}”; add it.`
  return {
    line,
    text: text.slice(from, to),
    number,
    reel,
    videoTrack,
    effect,
    frames: effect === 'cut' ? 0 : Math.max(0, duration),
    sourceIn,
    sourceOut,
    recordIn,
    recordOut,
    mode,
  }
}
