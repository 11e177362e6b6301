import { basename } from 'node:path'
import { ok, type Result } from '../../core/base/result.ts'
import { type GuideTrack, guideSpeed } from '../../core/film/guideTrack.ts'
import { speedWords } from '../../core/film/runningTimes.ts'
import { setGuide } from '../../core/job/commands/setGuide.ts'
import type { Reel } from '../../core/job/job.ts'
import { soundRows, soundWords } from '../../core/sound/soundWords.ts'
import { frame } from '../../core/time/frame.ts'
import { parsePosition } from '../../core/time/parsePosition.ts'
import { parseRate } from '../../core/time/parseRate.ts'
import { measureSoundNode } from '../../media/node/measureSoundNode.ts'
import { type Arguments, readArguments, textOption, wrongUse } from '../arguments.ts'
import { chooseReel } from '../chooseReel.ts'
import { EXIT, type ExitStatus } from '../exitStatus.ts'
import { readJobFile } from '../readJobFile.ts'
import type { Terminal } from '../terminal.ts'
import { changeJobFile } from '../writeJobFile.ts'

export const SOUND_USAGE =
  'reelwright sound FILE [--into JOB --frame PLACE --seconds S [--reel ID] [--made-for SPEED]] [--json]'

/** The guide track that is asked for: what is heard at --seconds belongs to --frame. */
const guideOf = (args: Arguments, reel: Reel, path: string): Result<GuideTrack> => {
  const [place, seconds] = [textOption(args, 'frame'), textOption(args, 'seconds')]
  if (place === undefined || !/^-?\d{1,6}(?:\.\d{1,6})?$/u.test(seconds ?? ''))
    return wrongUse(
      'Say where picture and sound have their sync mark: --frame PLACE and --seconds S.',
      SOUND_USAGE,
    )
  const at = parsePosition(place, reel, frame(0))
  if (!at.ok) return at
  const madeFor = textOption(args, 'made-for')
  const rate = madeFor === undefined ? ok(reel.rate) : parseRate(madeFor)
  if (!rate.ok) return rate
  const mark = { frame: at.value, seconds: Number(seconds) }
  return ok({ name: basename(path), madeFor: rate.value, mark })
}

/** Puts a guide track into a job; the job's own words of it come back. */
const putInto = async (args: Arguments, into: string, path: string): Promise<Result<string>> => {
  const job = await readJobFile(into)
  if (!job.ok) return job
  const reel = chooseReel(job.value, textOption(args, 'reel'), SOUND_USAGE)
  if (!reel.ok) return reel
  const guide = guideOf(args, reel.value, path)
  if (!guide.ok) return guide
  const kept = await changeJobFile(into, (now) => setGuide(now, reel.value.id, guide.value), [path])
  if (!kept.ok) return kept
  const times = guideSpeed(guide.value, reel.value.rate)
  const cents = 1200 * Math.log2(times)
  const pitch =
    Math.abs(cents) < 0.05
      ? 'as it was made'
      : `${cents > 0 ? '+' : '−'}${Math.abs(cents).toFixed(1)} cents`
  return ok(
    `Wrote ${into}: made for ${speedWords(guide.value.madeFor)}, run at ${speedWords(reel.value.rate)}, pitch ${pitch}.`,
  )
}

/** Measures a sound file, and puts it into a job as the guide track of a reel. */
export const soundCommand = async (
  argv: readonly string[],
  terminal: Terminal,
): Promise<Result<ExitStatus>> => {
  const text = { type: 'string' } as const
  const options = {
    ...{ into: text, reel: text, frame: text, seconds: text, 'made-for': text },
    json: { type: 'boolean' },
  } as const
  const args = readArguments(argv, options, SOUND_USAGE)
  if (!args.ok) return args
  const [path, another] = args.value.positionals
  if (path === undefined || another !== undefined)
    return wrongUse('Give one sound file.', SOUND_USAGE)
  const measured = await measureSoundNode(path)
  if (!measured.ok) return measured
  const into = textOption(args.value, 'into')
  const put = into === undefined ? undefined : await putInto(args.value, into, path)
  if (put && !put.ok) return put
  if (args.value.values.json) {
    const { envelope: _, ...facts } = measured.value
    terminal.json({ file: path, ...facts, written: into ?? null })
  } else {
    for (const [what, value] of soundRows(measured.value)) terminal.print(`${what}: ${value}`)
    for (const words of soundWords(measured.value)) terminal.print(words)
    if (put) terminal.print(put.value)
  }
  return ok(EXIT.fine)
}
