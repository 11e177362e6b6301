import { problem } from '../base/problem.ts'
import { fail, ok, type Result } from '../base/result.ts'
import { FRAMES_PER_FOOT, type Gauge, parseFootage } from '../time/footage.ts'
import { framesPerSecond, type Rate } from '../time/rate.ts'

const METRES_PER_FOOT = 0.3048

/** Metres of film that so many frames take, as a foot of the gauge is counted. */
export const metresOf = (frames: number, gauge: Gauge): number => {
  const [num, den] = FRAMES_PER_FOOT[gauge]
  return ((frames * den) / num) * METRES_PER_FOOT
}

/** Feet of film that run in a minute at a speed. */
export const feetPerMinute = (gauge: Gauge, rate: Rate): number => {
  const [num, den] = FRAMES_PER_FOOT[gauge]
  return (60 * framesPerSecond(rate) * den) / num
}

const LONGEST = 1e9

const clockSeconds = (text: string): number | undefined => {
  const parts = /^(?:(\d+):)?(\d+):(\d+(?:\.\d+)?)$/u.exec(text)
  if (!parts) return undefined
  const [, hours = '0', minutes = '0', seconds = '0'] = parts
  return 3600 * Number(hours) + 60 * Number(minutes) + Number(seconds)
}

/**
 * A length as it is written → frames: feet and frames (`186 ft 12 fr`, `186+12`), frames
 * (`2988 fr`), metres (`121.92 m`), or a running time at `rate` (`2:04`, `1:02:04`), to the nearest
 * frame.
 */
export const parseFilmLength = (text: string, gauge: Gauge, rate: Rate): Result<number> => {
  const trimmed = text.trim()
  const [num, den] = FRAMES_PER_FOOT[gauge]
  const metres = /^(\d+(?:\.\d+)?) ?m$/u.exec(trimmed)?.[1]
  const plain = /^(\d+) ?fr?$/u.exec(trimmed)?.[1]
  const seconds = clockSeconds(trimmed)
  const frames =
    metres !== undefined
      ? Math.round(((Number(metres) / METRES_PER_FOOT) * num) / den)
      : plain !== undefined
        ? Number(plain)
        : seconds === undefined
          ? undefined
          : Math.round(seconds * framesPerSecond(rate))
  if (frames !== undefined && frames <= LONGEST) return ok(frames)
  const footage = frames === undefined ? parseFootage(trimmed, gauge) : undefined
  return footage?.ok
    ? footage
    : fail(
        problem(
          'malformed',
          `“${text}” is no length of film; write it as 186 ft 12 fr, 2988 fr, 121.9 m or 2:04.`,
        ),
      )
}
