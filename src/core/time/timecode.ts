import { problem } from '../base/problem.ts'
import { fail, ok, type Result } from '../base/result.ts'
import { nominalFramesPerSecond, type Rate } from './rate.ts'

/** Only 30000/1001 and 60000/1001 frames a second have a drop-frame count (ST 12-1, ST 12-3). */
export const canDropFrames = (rate: Rate): boolean =>
  rate.den === 1001 && (rate.num === 30_000 || rate.num === 60_000)

/** Labels left out at the start of each minute that is not a multiple of ten. */
const droppedPerMinute = (rate: Rate, isDropFrame: boolean): number =>
  isDropFrame && canDropFrames(rate) ? nominalFramesPerSecond(rate) / 15 : 0

/** Frames in a day's count of timecode. */
export const framesPerDay = (rate: Rate, isDropFrame: boolean): number => {
  const dropped = droppedPerMinute(rate, isDropFrame)
  return 86_400 * nominalFramesPerSecond(rate) - dropped * (24 * 60 - 24 * 6)
}

const two = (n: number): string => String(n).padStart(2, '0')

/**
 * A count of frames from 00:00:00:00 as a timecode label, wrapping after 24 hours. Drop-frame
 * labels leave out two (30000/1001) or four (60000/1001) numbers each minute but every tenth, and
 * have a semicolon before the frames. ST 12-1:2014, ST 12-3 (rule checked against the vectors).
 */
export const formatTimecode = (count: number, rate: Rate, isDropFrame: boolean): string => {
  const nominal = nominalFramesPerSecond(rate)
  const day = framesPerDay(rate, isDropFrame)
  const dropped = droppedPerMinute(rate, isDropFrame)
  let label = ((count % day) + day) % day
  if (dropped > 0) {
    const perTenMinutes = 600 * nominal - 9 * dropped
    const perMinute = 60 * nominal - dropped
    const tens = Math.floor(label / perTenMinutes)
    const rest = label % perTenMinutes
    label += 9 * dropped * tens
    if (rest >= dropped) label += dropped * Math.floor((rest - dropped) / perMinute)
  }
  const seconds = Math.floor(label / nominal)
  const hours = two(Math.floor(seconds / 3600))
  const minutes = two(Math.floor(seconds / 60) % 60)
  const separator = dropped > 0 ? ';' : ':'
  return `${hours}:${minutes}:${two(seconds % 60)}${separator}${two(label % nominal)}`
}

/** Whether drop-frame counting leaves out the label of these seconds from 00:00:00 and frames. */
export const isLabelLeftOut = (
  seconds: number,
  frames: number,
  rate: Rate,
  isDropFrame: boolean,
): boolean =>
  frames < droppedPerMinute(rate, isDropFrame) && seconds % 60 === 0 && seconds % 600 !== 0

/** The count of frames from 00:00:00:00 of a label of whole seconds and frames below the rate. */
export const labelToCount = (
  seconds: number,
  frames: number,
  rate: Rate,
  isDropFrame: boolean,
): number => {
  const minute = Math.floor(seconds / 60)
  const dropped = droppedPerMinute(rate, isDropFrame) * (minute - Math.floor(minute / 10))
  return seconds * nominalFramesPerSecond(rate) + frames - dropped
}

/** Characters that are shown of what is no label. */
const MOST_SHOWN = 60

/**
 * A timecode label → its count of frames from 00:00:00:00. Refuses labels the count leaves out,
 * frames at or past the rate, minutes and seconds past 59, hours past 23, and drop-frame
 * punctuation where no frames are dropped.
 */
export const parseTimecode = (text: string, rate: Rate, isDropFrame: boolean): Result<number> => {
  const refuse = (says: string) => fail(problem('malformed', says, { field: 'timecode' }))
  const shown = text.length > MOST_SHOWN ? `${text.slice(0, MOST_SHOWN)}…` : text
  const parts = /^\s*(\d{1,2}):(\d{2}):(\d{2})([:;.,])(\d{2,3})\s*$/u.exec(text)
  if (!parts) return refuse(`“${shown}” is not a timecode; write hours:minutes:seconds:frames.`)
  const [hours = 0, minutes = 0, seconds = 0] = parts.slice(1, 4).map(Number)
  const frames = Number(parts[5])
  const nominal = nominalFramesPerSecond(rate)
  const dropped = droppedPerMinute(rate, isDropFrame)
  if (parts[4] !== ':' && dropped === 0)
    return refuse(`“${text}” has drop-frame punctuation, but this count drops no frames; use “:”.`)
  if (hours > 23) return refuse(`“${text}”: hours go from 00 to 23.`)
  if (minutes > 59 || seconds > 59)
    return refuse(`“${text}”: minutes and seconds go from 00 to 59.`)
  if (frames >= nominal)
    return refuse(`“${text}”: frames go from 00 to ${nominal - 1} at this rate.`)
  const whole = (60 * hours + minutes) * 60 + seconds
  if (isLabelLeftOut(whole, frames, rate, isDropFrame))
    return refuse(`“${text}” is left out by drop-frame counting; the next is :${two(dropped)}.`)
  return ok(labelToCount(whole, frames, rate, isDropFrame))
}
