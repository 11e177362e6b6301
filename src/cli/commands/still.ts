import { basename, dirname, join } from 'node:path'
import { problem } from '../../core/base/problem.ts'
import { fail, ok, type Result } from '../../core/base/result.ts'
import { stillFormatOf } from '../../core/formats/stillFormats.ts'
import { codingOf } from '../../core/job/codingOf.ts'
import { cueIndexAt, cuesOfReel } from '../../core/job/cueList.ts'
import { valuesAt } from '../../core/job/valuesAt.ts'
import { frame } from '../../core/time/frame.ts'
import { parsePosition } from '../../core/time/parsePosition.ts'
import { formatTimecode } from '../../core/time/timecode.ts'
import { openMediaNode } from '../../media/node/openMediaNode.ts'
import { makeStillFile } from '../../work/makeStillFile.ts'
import { readArguments, textOption, wrongUse } from '../arguments.ts'
import { chooseReel } from '../chooseReel.ts'
import { EXIT, type ExitStatus } from '../exitStatus.ts'
import { readJobFile } from '../readJobFile.ts'
import type { Terminal } from '../terminal.ts'
import { notOver, writeWhole } from '../writeFiles.ts'

export const STILL_USAGE =
  'reelwright still JOB --at FRAME|TIMECODE --out FILE.png|.tif|.dpx [--scanned] [--reel ID] [--media FILE] [--json]'

/** Saves one frame of a job's reel as a picture file: as it is delivered, or as scanned. */
export const stillCommand = async (
  argv: readonly string[],
  terminal: Terminal,
): Promise<Result<ExitStatus>> => {
  const options = {
    at: { type: 'string' },
    out: { type: 'string' },
    scanned: { type: 'boolean' },
    reel: { type: 'string' },
    media: { type: 'string' },
    json: { type: 'boolean' },
  } as const
  const args = readArguments(argv, options, STILL_USAGE)
  if (!args.ok) return args
  const [path, ...more] = args.value.positionals
  const place = textOption(args.value, 'at')
  const out = textOption(args.value, 'out')
  if (path === undefined || more.length > 0) return wrongUse('Give one job.', STILL_USAGE)
  if (place === undefined) return wrongUse('Say which frame with --at.', STILL_USAGE)
  if (out === undefined) return wrongUse('Say where to write with --out FILE.', STILL_USAGE)
  const format = stillFormatOf(out)
  if (!format) return wrongUse(`“${out}” does not end in .png, .tif or .dpx.`, STILL_USAGE)
  const job = await readJobFile(path)
  if (!job.ok) return job
  const chosen = chooseReel(job.value, textOption(args.value, 'reel'), STILL_USAGE)
  if (!chosen.ok) return chosen
  const reel = chosen.value
  const at = parsePosition(place, reel, frame(0))
  if (!at.ok) return fail({ ...at.problems[0], code: 'wrong-use' })
  const cues = cuesOfReel(job.value, reel.id)
  const index = cueIndexAt(cues, at.value)
  const cue = cues[index]
  if (!cue) return fail(problem('not-found', `Frame ${at.value} belongs to no cue of ${path}.`))
  const isScanned = Boolean(args.value.values.scanned)
  const media = textOption(args.value, 'media') ?? join(dirname(path), reel.media.name)
  const opened = await openMediaNode(media)
  if (!opened.ok) return opened
  const { rate, isDropFrame, startCount } = reel
  const timecode = formatTimecode(startCount + at.value, rate, isDropFrame)
  try {
    const { bytes, clipped } = await makeStillFile(await opened.value.read(at.value), {
      frame: at.value,
      coding: codingOf(reel),
      values: isScanned ? undefined : valuesAt(cue, cues[index - 1], at.value),
      format,
      words: { name: basename(out), rate, timecode },
    })
    const free = await notOver([out], [path, media])
    if (!free.ok) return free
    const written = await writeWhole(out, bytes)
    if (!written.ok) return written
    const stage = isScanned ? 'scanned' : 'graded'
    if (args.value.values.json)
      terminal.json({ written: out, frame: at.value, timecode, stage, clipped })
    else {
      terminal.print(`Wrote ${out}: frame ${at.value}, ${timecode}, ${stage}`)
      if (clipped > 0)
        terminal.note(`Clipped at black or peak white: ${clipped} pixels that lay past it.`)
    }
    return ok(EXIT.fine)
  } finally {
    opened.value.close()
  }
}
