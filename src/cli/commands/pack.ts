import { ok, type Result } from '../../core/base/result.ts'
import { addPack } from '../../core/job/commands/addPack.ts'
import { REVIEWER_LIMIT } from '../../core/job/limits.ts'
import { openMediaNode } from '../../media/node/openMediaNode.ts'
import { createPaceKeeper } from '../../work/pace.ts'
import { type Arguments, readArguments, textOption, wrongUse } from '../arguments.ts'
import { chooseReel } from '../chooseReel.ts'
import { EXIT, type ExitStatus } from '../exitStatus.ts'
import { kernelHere } from '../kernelHere.ts'
import { chosenCues } from '../packing/chosenCues.ts'
import { makePackFile, type PackTask, reckonPack } from '../packing/makePackFile.ts'
import { readJobFile } from '../readJobFile.ts'
import type { Terminal } from '../terminal.ts'
import { mediaBeside } from '../transfer/transferTask.ts'
import { notOver } from '../writeFiles.ts'
import { changeJobFile } from '../writeJobFile.ts'

export const PACK_USAGE =
  'reelwright pack JOB --out FILE.html|.zip [--reel ID] [--media FILE] [--cues 1,4-9 | --scene MARK | --open] [--for NAME] [--clips SECONDS] [--size PIXELS] [--unsigned] [--dry-run] [--json]'

const SIZE = 960
const SMALLEST = 64
const LARGEST = 8192
const LONGEST_CLIP = 60

/** A number in its range, or undefined where the text is none such. */
const numberIn = (text: string, low: number, high: number): number | undefined => {
  const value = /^\d{1,5}(?:\.\d{1,3})?$/u.test(text) ? Number(text) : Number.NaN
  return value >= low && value <= high ? value : undefined
}

/** What is asked of the pack besides its cues. */
type Asked = Pick<PackTask, 'size' | 'clipSeconds' | 'madeFor' | 'isSigned' | 'hasStills'> & {
  readonly path: string
  readonly out: string
}

const askedOf = (args: Arguments): Result<Asked> => {
  const [path, another] = args.positionals
  const out = textOption(args, 'out')
  const size = numberIn(textOption(args, 'size') ?? String(SIZE), SMALLEST, LARGEST)
  const clipSeconds = numberIn(textOption(args, 'clips') ?? '0', 0, LONGEST_CLIP)
  const madeFor = textOption(args, 'for') ?? ''
  const isSigned = !args.values.unsigned
  if (path === undefined || another !== undefined) return wrongUse('Give one job.', PACK_USAGE)
  if (out === undefined || !/\.(?:html|zip)$/u.test(out))
    return wrongUse('Say where to write with --out FILE.html or FILE.zip.', PACK_USAGE)
  if (size === undefined)
    return wrongUse(`Give --size from ${SMALLEST} to ${LARGEST} pixels.`, PACK_USAGE)
  if (clipSeconds === undefined)
    return wrongUse(`Give --clips from 0 to ${LONGEST_CLIP} seconds.`, PACK_USAGE)
  if (madeFor.length > REVIEWER_LIMIT)
    return wrongUse(`A name has at most ${REVIEWER_LIMIT} characters.`, PACK_USAGE)
  const hasStills = out.endsWith('.zip')
  return ok({ path, out, size: Math.round(size), clipSeconds, madeFor, isSigned, hasStills })
}

const sizeWords = (bytes: number): string =>
  bytes >= 1e6 ? `${(bytes / 1e6).toFixed(1)} MB` : `${Math.ceil(bytes / 1000)} kB`

const tellSize = async (task: PackTask, args: Arguments, terminal: Terminal): Promise<void> => {
  const bytes = (await reckonPack(task)) ?? null
  const cues = task.cues.length
  const size = bytes === null ? 'their pictures cannot be read' : `about ${sizeWords(bytes)}`
  if (args.values.json) terminal.json({ cues, bytes, written: false })
  else terminal.print(`${cues} cues, ${size}. Nothing was written: a dry run.`)
}

/** Makes the pack and writes it and its record into the job: both or neither. */
const writePack = async (
  task: PackTask,
  { path, out }: Asked,
  media: string,
  args: Arguments,
  terminal: Terminal,
): Promise<Result<ExitStatus>> => {
  const free = await notOver([out], [path, media])
  if (!free.ok) return free
  const pace = createPaceKeeper(task.cues.length, () => performance.now())
  const made = await makePackFile(task, (done) => terminal.pace('Pictures', pace(done)))
  terminal.clearPace()
  if (!made.ok) return made
  const { bytes, record, left } = made.value
  const pack = { path: out, content: bytes }
  const kept = await changeJobFile(path, (now) => addPack(now, record), [media], [pack])
  if (!kept.ok) return kept
  if (left.length > 0) terminal.problems(left)
  if (args.values.json)
    terminal.json({ written: out, cues: record.cues, bytes: bytes.length, pack: record.id, left })
  else
    terminal.print(
      `Wrote ${out}: ${record.cues} cues, ${sizeWords(bytes.length)}. ${path} knows it as ${record.id}.`,
    )
  return ok(left.length > 0 ? EXIT.outside : EXIT.fine)
}

/** Makes a review pack, and keeps its record in the job, by which its answers are known again. */
export const packCommand = async (
  argv: readonly string[],
  terminal: Terminal,
): Promise<Result<ExitStatus>> => {
  const text = { type: 'string' } as const
  const flag = { type: 'boolean' } as const
  const options = {
    ...{ out: text, reel: text, media: text, cues: text, scene: text, open: flag, for: text },
    ...{ clips: text, size: text, unsigned: flag, 'dry-run': flag, json: flag },
  } as const
  const args = readArguments(argv, options, PACK_USAGE)
  if (!args.ok) return args
  const asked = askedOf(args.value)
  if (!asked.ok) return asked
  const job = await readJobFile(asked.value.path)
  if (!job.ok) return job
  const reel = chooseReel(job.value, textOption(args.value, 'reel'), PACK_USAGE)
  if (!reel.ok) return reel
  const cues = chosenCues(job.value, reel.value, args.value, PACK_USAGE)
  if (!cues.ok) return cues
  const kernel = await kernelHere()
  if (!kernel.ok) return kernel
  const media =
    textOption(args.value, 'media') ?? mediaBeside(asked.value.path, reel.value.media.name)
  const source = await openMediaNode(media)
  if (!source.ok) return source
  const task: PackTask = {
    ...{ job: job.value, reel: reel.value, cues: cues.value, ...asked.value },
    ...{ source: source.value, kernel: kernel.value },
  }
  try {
    if (!args.value.values['dry-run'])
      return await writePack(task, asked.value, media, args.value, terminal)
    await tellSize(task, args.value, terminal)
    return ok(EXIT.fine)
  } finally {
    source.value.close()
  }
}
