import type { Branded } from '../../base/brand.ts'

/**
 * A timecode label as it stands in a list, in one whole number: seconds from 00:00:00, a bit for
 * drop-frame punctuation, frames. How many frames it counts waits until the list's rate is known.
 */
export type EdlLabel = Branded<number, 'EdlLabel'>

const FRAMES = 1024
const DROP_MARK = FRAMES
const SECOND = 2 * FRAMES

export const labelSeconds = (label: EdlLabel): number => Math.floor(label / SECOND)

export const labelFrames = (label: EdlLabel): number => label % FRAMES

export const hasDropMark = (label: EdlLabel): boolean => (label & DROP_MARK) !== 0

const two = (n: number): string => String(n).padStart(2, '0')

export const labelText = (label: EdlLabel): string => {
  const seconds = labelSeconds(label)
  const [hours, minutes] = [Math.floor(seconds / 3600), Math.floor(seconds / 60) % 60]
  const mark = hasDropMark(label) ? ';' : ':'
  return `${two(hours)}:${two(minutes)}:${two(seconds % 60)}${mark}${two(labelFrames(label))}`
}

const COLON = 58

const isDigit = (code: number): boolean => code >= 48 && code <= 57

/** The number of two digits at `at`; −1 where they are not both digits. */
const pairAt = (text: string, at: number): number => {
  const tens = text.charCodeAt(at)
  const ones = text.charCodeAt(at + 1)
  return isDigit(tens) && isDigit(ones) ? (tens - 48) * 10 + ones - 48 : -1
}

/** The bit for the punctuation before the frames; −1 for none known. */
const dropBit = (code: number): number => {
  if (code === COLON) return 0
  return code === 59 || code === 46 || code === 44 ? DROP_MARK : -1
}

/**
 * The label from `from` up to `to`: `hh:mm:ss:ff`, hours of one digit or two, frames of two or
 * three; drop-frame punctuation is `;`, `.` or `,`. Undefined where it is none.
 */
export const readEdlLabel = (text: string, from: number, to: number): EdlLabel | undefined => {
  const isShort = text.charCodeAt(from + 1) === COLON
  const at = isShort ? from - 1 : from
  const hours = isShort ? pairAt(`0${text.charAt(from)}`, 0) : pairAt(text, at)
  const minutes = pairAt(text, at + 3)
  const seconds = pairAt(text, at + 6)
  const drop = dropBit(text.charCodeAt(at + 8))
  const lastDigit = text.charCodeAt(at + 11)
  const isLong = to - at === 12 && isDigit(lastDigit)
  const pair = pairAt(text, at + 9)
  const frames = isLong && pair >= 0 ? pair * 10 + lastDigit - 48 : pair
  return (to - at === 11 || isLong) &&
    text.charCodeAt(at + 2) === COLON &&
    text.charCodeAt(at + 5) === COLON &&
    hours >= 0 &&
    hours < 24 &&
    minutes >= 0 &&
    minutes < 60 &&
    seconds >= 0 &&
    seconds < 60 &&
    drop >= 0 &&
    frames >= 0
    ? ((((hours * 60 + minutes) * 60 + seconds) * SECOND + drop + frames) as EdlLabel)
    : undefined
}
