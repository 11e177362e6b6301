import { ok, type Result } from '../../core/base/result.ts'
import { parseFilmLength } from '../../core/film/filmLength.ts'
import type { TrackKind } from '../../core/film/soundOffset.ts'
import type { Gauge } from '../../core/time/footage.ts'
import { GAUGE_WORDS } from '../../core/time/gaugeWords.ts'
import { parseRate } from '../../core/time/parseRate.ts'
import type { Rate } from '../../core/time/rate.ts'
import { type Arguments, readArguments, textOption, wrongUse } from '../arguments.ts'
import { EXIT, type ExitStatus } from '../exitStatus.ts'
import {
  type FilmAnswer,
  lengthAnswer,
  pulldownAnswer,
  shrinkageAnswer,
  soundAnswer,
  speedAnswer,
} from '../film/filmAnswers.ts'
import type { Terminal } from '../terminal.ts'

export const FILM_USAGE =
  'reelwright film length LENGTH --gauge G [--speed S] | speed FROM TO | sound --gauge G --track optical|magnetic|separate [--speed S] | shrinkage --gauge G --pitches N --measured MM | pulldown FRAME [--json]'

const GAUGES = Object.keys(GAUGE_WORDS) as Gauge[]
const TRACKS: readonly TrackKind[] = ['optical', 'magnetic', 'separate']

const gaugeOf = (args: Arguments): Result<Gauge> => {
  const named = textOption(args, 'gauge')
  const gauge = GAUGES.find((each) => each === named)
  return gauge ? ok(gauge) : wrongUse(`Give --gauge one of ${GAUGES.join(', ')}.`, FILM_USAGE)
}

const speedOf = (args: Arguments, otherwise: string): Result<Rate> =>
  parseRate(textOption(args, 'speed') ?? otherwise)

const answerTo = (args: Arguments): Result<FilmAnswer> => {
  const [what, first, second] = args.positionals
  if (what === 'speed') {
    if (first === undefined || second === undefined)
      return wrongUse('Give two speeds: made for, and run at.', FILM_USAGE)
    const [from, to] = [parseRate(first), parseRate(second)]
    if (!from.ok) return from
    return to.ok ? ok(speedAnswer(from.value, to.value)) : to
  }
  if (what === 'pulldown') {
    const frame = /^\d{1,9}$/u.test(first ?? '') ? Number(first) : undefined
    return frame === undefined
      ? wrongUse('Give a video frame, counted from 0 from one that shows an A frame.', FILM_USAGE)
      : ok(pulldownAnswer(frame))
  }
  if (what !== 'length' && what !== 'sound' && what !== 'shrinkage')
    return wrongUse('Say what: length, speed, sound, shrinkage or pulldown.', FILM_USAGE)
  const gauge = gaugeOf(args)
  if (!gauge.ok) return gauge
  if (what === 'length') {
    const speed = speedOf(args, '24')
    if (!speed.ok) return speed
    const frames = parseFilmLength(first ?? '', gauge.value, speed.value)
    return frames.ok ? ok(lengthAnswer(frames.value, gauge.value, speed.value)) : frames
  }
  if (what === 'sound') {
    const track = TRACKS.find((each) => each === textOption(args, 'track'))
    const speed = speedOf(args, '24')
    if (!track) return wrongUse(`Give --track one of ${TRACKS.join(', ')}.`, FILM_USAGE)
    return speed.ok ? soundAnswer(gauge.value, track, speed.value) : speed
  }
  const [count, measured] = [textOption(args, 'pitches'), textOption(args, 'measured')].map(Number)
  return shrinkageAnswer(gauge.value, count ?? Number.NaN, measured ?? Number.NaN)
}

/** Film arithmetic: lengths, speeds, where sound lies, shrinkage, pulldown. */
export const filmCommand = (argv: readonly string[], terminal: Terminal): Result<ExitStatus> => {
  const text = { type: 'string' } as const
  const options = {
    ...{ gauge: text, speed: text, track: text, pitches: text, measured: text },
    json: { type: 'boolean' },
  } as const
  const args = readArguments(argv, options, FILM_USAGE)
  if (!args.ok) return args
  const answer = answerTo(args.value)
  if (!answer.ok) return answer
  if (args.value.values.json) terminal.json(answer.value.told)
  else for (const line of answer.value.lines) terminal.print(line)
  return ok(EXIT.fine)
}
