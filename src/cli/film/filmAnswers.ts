import { problem } from '../../core/base/problem.ts'
import { fail, ok, type Result } from '../../core/base/result.ts'
import { metresOf } from '../../core/film/filmLength.ts'
import { speedChange } from '../../core/film/filmSpeed.ts'
import { pulldownLetter, pulledFrame } from '../../core/film/pulldown.ts'
import { runningTimes, speedWords } from '../../core/film/runningTimes.ts'
import { PITCHES, shrinkage, shrinkageAdvice } from '../../core/film/shrinkage.ts'
import { soundOffset, type TrackKind } from '../../core/film/soundOffset.ts'
import { formatFootage, type Gauge } from '../../core/time/footage.ts'
import { GAUGE_WORDS } from '../../core/time/gaugeWords.ts'
import { type Rate, secondsAt } from '../../core/time/rate.ts'

/** An answer for a person, and as data. */
export type FilmAnswer = { readonly lines: readonly string[]; readonly told: object }

const decimals = (value: number, places: number): string => value.toFixed(places)

const signed = (value: number, places: number): string =>
  `${value < 0 ? '−' : '+'}${decimals(Math.abs(value), places)}`

export const lengthAnswer = (frames: number, gauge: Gauge, speed: Rate): FilmAnswer => {
  const footage = formatFootage(frames, gauge)
  const metres = metresOf(frames, gauge)
  const running = runningTimes(frames, gauge, speed)
  return {
    lines: [
      `${GAUGE_WORDS[gauge]}: ${frames} frames, ${footage}, ${decimals(metres, 2)} m`,
      ...running.map(
        ({ words, time, feetPerMinute }) =>
          `  at ${words} frames/s: ${time}, ${decimals(feetPerMinute, 2)} ft a minute`,
      ),
    ],
    told: { gauge, frames, footage, metres, running },
  }
}

export const speedAnswer = (madeFor: Rate, runAt: Rate): FilmAnswer => {
  const change = speedChange(madeFor, runAt)
  return {
    lines: [
      `Made for ${speedWords(madeFor)} and run at ${speedWords(runAt)} frames/s: ${decimals(change.ratio, 6)} times as fast`,
      `  length ${signed(100 * (change.length - 1), 4)} %`,
      `  pitch ${signed(change.cents, 3)} cents`,
    ],
    told: { madeFor, runAt, ...change },
  }
}

export const soundAnswer = (gauge: Gauge, track: TrackKind, speed: Rate): Result<FilmAnswer> => {
  const offset = soundOffset(gauge, track)
  if (!offset)
    return fail(
      problem(
        'not-found',
        `Where ${track} sound lies on ${GAUGE_WORDS[gauge]} is not known here; measure it on the film.`,
      ),
    )
  const { frames, source, standing } = offset
  const seconds = secondsAt(frames, speed)
  const where = frames === 0 ? 'level with' : frames > 0 ? 'ahead of' : 'behind'
  return ok({
    lines: [
      `${GAUGE_WORDS[gauge]}, ${track}: sound lies ${Math.abs(frames)} frames ${where} its picture, ${decimals(Math.abs(seconds), 4)} s at ${speedWords(speed)} frames/s`,
      `  ${standing}: ${source}. A value to begin from; read it on the film.`,
    ],
    told: { gauge, track, rate: speed, seconds, ...offset },
  })
}

export const shrinkageAnswer = (
  gauge: Gauge,
  count: number,
  measured: number,
): Result<FilmAnswer> => {
  const pitches = PITCHES[gauge]
  if (!pitches)
    return fail(
      problem(
        'not-found',
        `The pitch of ${GAUGE_WORDS[gauge]} is not known here; measure new film.`,
      ),
    )
  if (!(Number.isInteger(count) && count > 0 && measured > 0 && measured < 1e7))
    return fail(
      problem(
        'out-of-range',
        'Give --pitches as a whole number and --measured in mm, both above 0.',
      ),
    )
  const found = pitches.map((pitch) => ({ ...pitch, part: shrinkage(measured, count, pitch.mm) }))
  return ok({
    lines: found
      .flatMap(({ name, mm, standing, part }) => [
        `Against ${name}, ${mm} mm (${standing}): ${signed(-100 * part, 3)} % in length`,
        `  ${shrinkageAdvice(part)}`,
      ])
      .concat(
        'Advice varies by house, common practice, no published source; the archive’s own rule comes first.',
      ),
    told: { gauge, count, measured, against: found },
  })
}

export const pulldownAnswer = (video: number): FilmAnswer => {
  const { fields, isWhole } = pulledFrame(video)
  const [first, second] = fields
  return {
    lines: [
      `Video frame ${video}: film frame ${first} (${pulldownLetter(first)}) in its first field, ${second} (${pulldownLetter(second)}) in its second${isWhole ? '; whole' : '; mixed of two'}`,
    ],
    told: { video, fields, letters: fields.map(pulldownLetter), isWhole },
  }
}
