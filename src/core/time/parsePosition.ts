import { problem } from '../base/problem.ts'
import { fail, ok, type Result } from '../base/result.ts'
import { type Gauge, parseFootage } from './footage.ts'
import { type Frame, frame } from './frame.ts'
import type { Rate } from './rate.ts'
import { formatTimecode, framesPerDay, parseTimecode } from './timecode.ts'

/** What places on a reel are counted by. */
export type ReelCount = {
  readonly rate: Rate
  readonly isDropFrame: boolean
  /** Frames from 00:00:00:00 to the first picture of the reel. */
  readonly startCount: number
  readonly gauge: Gauge
  readonly frames: number
}

const FIELDS = 4

/**
 * A label of which the last fields were typed, made whole with the first ones of the present label:
 * at 10:00:09:02, `11:05` is 10:00:11:05.
 */
const wholeLabel = (text: string, present: string): string => {
  const typed = text.trim().split(/[:;.,]/u)
  const missing = FIELDS - typed.length
  if (missing <= 0 || !typed.every((field) => /^\d{1,2}$/u.test(field))) return text
  const now = present.split(/[:;]/u)
  const fields = [...now.slice(0, missing), ...typed.map((field) => field.padStart(2, '0'))]
  return `${fields.slice(0, -1).join(':')}${present.at(-3)}${fields.at(-1)}`
}

const fromTimecode = (text: string, reel: ReelCount, present: Frame): Result<number> => {
  const { rate, isDropFrame, startCount } = reel
  const now = formatTimecode(startCount + present, rate, isDropFrame)
  const count = parseTimecode(wholeLabel(text, now), rate, isDropFrame)
  if (!count.ok) return count
  const day = framesPerDay(rate, isDropFrame)
  const from = count.value - startCount
  return ok(from < 0 && from + day < reel.frames ? from + day : from)
}

/**
 * A place on a reel as it is typed → its frame. Timecode has colons (`10:00:11:05`; fields left out
 * at the front are those of the `present` frame), footage a plus sign or its units (`186+12`,
 * `186 ft 12 fr`), and a whole number alone is a frame from 0, as job files count. What lies outside
 * the reel is refused.
 */
export const parsePosition = (text: string, reel: ReelCount, present: Frame): Result<Frame> => {
  const isTimecode = /\d\s*[:;]/u.test(text)
  const isFrame = /^\s*(?:(?:frame|fr)\s*)?\d+\s*$/iu.test(text)
  const isFootage = !isTimecode && /^\s*\d+\s*(?:\+|ft)/iu.test(text)
  if (!isTimecode && !isFrame && !isFootage)
    return fail(
      problem(
        'malformed',
        'Write a timecode (10:00:11:05), feet and frames (186+12), or a frame number (279).',
        { field: 'position' },
      ),
    )
  const found = isFrame
    ? ok(Number(/\d+/u.exec(text)?.[0]))
    : isFootage
      ? parseFootage(text, reel.gauge)
      : fromTimecode(text, reel, present)
  if (!found.ok) return found
  if (found.value >= 0 && found.value < reel.frames) return ok(frame(found.value))
  const { rate, isDropFrame, startCount, frames } = reel
  const first = formatTimecode(startCount, rate, isDropFrame)
  const last = formatTimecode(startCount + frames - 1, rate, isDropFrame)
  return fail(
    problem('out-of-range', `The reel goes from ${first} to ${last}: frames 0 to ${frames - 1}.`, {
      field: 'position',
    }),
  )
}
