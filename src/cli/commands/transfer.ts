import { availableParallelism } from 'node:os'
import { basename, dirname, extname } from 'node:path'
import { ok, type Result } from '../../core/base/result.ts'
import { addPass } from '../../core/job/commands/addPass.ts'
import type { Job, Reel } from '../../core/job/job.ts'
import { PROGRAM_VERSION } from '../../core/programVersion.ts'
import { type PassRecord, passStanding } from '../../core/transfer/passRecord.ts'
import {
  isSequence,
  TRANSFER_FORMAT_FACTS,
  TRANSFER_FORMATS,
  type TransferFormat,
} from '../../core/transfer/transferSettings.ts'
import { openMediaNode } from '../../media/node/openMediaNode.ts'
import { createPaceKeeper } from '../../work/pace.ts'
import { type Arguments, readArguments, textOption, wrongUse } from '../arguments.ts'
import { chooseReel } from '../chooseReel.ts'
import { EXIT, type ExitStatus } from '../exitStatus.ts'
import { kernelHere } from '../kernelHere.ts'
import { readJobFile } from '../readJobFile.ts'
import type { Terminal } from '../terminal.ts'
import { afterPass } from '../transfer/afterPass.ts'
import { beforePass } from '../transfer/beforePass.ts'
import { makePart } from '../transfer/makePart.ts'
import { clearUnfinished, isPartThere, partName } from '../transfer/partFolder.ts'
import { mediaBeside, type TransferNames, transferTask } from '../transfer/transferTask.ts'
import { wholePass } from '../transfer/wholePass.ts'

import { changeJobFile } from '../writeJobFile.ts'

export const TRANSFER_USAGE =
  'reelwright transfer JOB --out PATH [--reel ID] [--media FILE] [--format dpx|tiff|png|h264|vp9|av1] [--part I/N] [--resume] [--workers K] [--override REASON] [--record] [--json]'

const isFormat = (text: string): text is TransferFormat =>
  (TRANSFER_FORMATS as readonly string[]).includes(text)

/** The format that is meant: as named, else by how the name ends, else as the job has it. */
const formatFor = (named: string | undefined, out: string, reel: Reel): Result<TransferFormat> => {
  if (named !== undefined && !isFormat(named))
    return wrongUse(
      `--format is one of ${TRANSFER_FORMATS.join(', ')}, not “${named}”.`,
      TRANSFER_USAGE,
    )
  const set = named ?? reel.transfer.format
  const ending = extname(out).slice(1).toLowerCase()
  const { extension, title } = TRANSFER_FORMAT_FACTS[set]
  if (isSequence(set) ? ending !== 'mp4' && ending !== 'webm' : ending === extension) return ok(set)
  if (named === undefined && ending === 'mp4') return ok('h264')
  if (named === undefined && ending === 'webm') return ok('vp9')
  return wrongUse(
    isSequence(set)
      ? `${title} is written to a folder: “${out}” ends like a video.`
      : `${title} is written to a file whose name ends in .${extension}.`,
    TRANSFER_USAGE,
  )
}

type PartNumber = { readonly part: number; readonly of: number }

const MOST_PARTS = 100_000

const partFor = (text: string | undefined): Result<PartNumber | undefined> => {
  if (text === undefined) return ok(undefined)
  const [part, of] = /^(\d+)\/(\d+)$/u.exec(text)?.slice(1).map(Number) ?? []
  return part && of && part <= of && of <= MOST_PARTS
    ? ok({ part, of })
    : wrongUse(`--part is I/N, as 3/8, not “${text}”.`, TRANSFER_USAGE)
}

const workersFor = (text: string | undefined): Result<number> => {
  if (text === undefined) return ok(Math.min(4, availableParallelism()))
  const count = Number(text)
  return Number.isInteger(count) && count >= 1 && count <= 64
    ? ok(count)
    : wrongUse(`--workers is a whole number from 1 to 64, not “${text}”.`, TRANSFER_USAGE)
}

type Wishes = {
  readonly jobPath: string
  readonly job: Job
  readonly names: TransferNames
  readonly out: string
  readonly part: PartNumber | undefined
  readonly workers: number
  readonly args: Arguments
}

const readWishes = async (args: Arguments): Promise<Result<Wishes>> => {
  const [jobPath, ...more] = args.positionals
  if (jobPath === undefined || more.length > 0) return wrongUse('Give one job.', TRANSFER_USAGE)
  const out = textOption(args, 'out')?.replace(/\/+$/u, '')
  if (out === undefined || out === '')
    return wrongUse('Say where to write with --out PATH.', TRANSFER_USAGE)
  const part = partFor(textOption(args, 'part'))
  if (!part.ok) return part
  const workers = workersFor(textOption(args, 'workers'))
  if (!workers.ok) return workers
  const job = await readJobFile(jobPath)
  if (!job.ok) return job
  const reel = chooseReel(job.value, textOption(args, 'reel'), TRANSFER_USAGE)
  if (!reel.ok) return reel
  const format = formatFor(textOption(args, 'format'), out, reel.value)
  if (!format.ok) return format
  const mediaPath = textOption(args, 'media') ?? mediaBeside(jobPath, reel.value.media.name)
  const names = { jobPath, mediaPath, reelId: reel.value.id, format: format.value }
  return ok({ jobPath, job: job.value, names, out, part: part.value, workers: workers.value, args })
}

const tellPart = (
  folder: string,
  outcome: 'made' | 'was there already',
  { values }: Arguments,
  number: PartNumber,
  terminal: Terminal,
): Result<ExitStatus> => {
  if (values.json) terminal.json({ written: folder, ...number, outcome })
  else terminal.print(outcome === 'made' ? `Wrote ${folder}` : `${folder} ${outcome}.`)
  return ok(EXIT.fine)
}

/** One part, made here. */
const runPart = async (
  { names, out, args }: Wishes,
  { part, of }: PartNumber,
  terminal: Terminal,
): Promise<Result<ExitStatus>> => {
  const task = await transferTask(names)
  if (!task.ok) return task
  const folder = partName(out, part, of)
  const there = await isPartThere(folder, task.value.identity)
  if (!there.ok) return there
  if (there.value) return tellPart(folder, 'was there already', args, { part, of }, terminal)
  const kernel = await kernelHere()
  if (!kernel.ok) return kernel
  const source = await openMediaNode(names.mediaPath)
  if (!source.ok) return source
  try {
    if (args.values.resume) await clearUnfinished(dirname(folder), basename(folder))
    const pace = createPaceKeeper(Math.ceil(task.value.plan.timeline.frames / of), () =>
      performance.now(),
    )
    let done = 0
    const tools = { source: source.value, kernel: kernel.value }
    const made = await makePart(task.value, tools, { part, of, folder }, () => {
      done++
      terminal.pace('Writing', pace(done))
    })
    if (!made.ok) return made
    terminal.clearPace()
    return tellPart(folder, 'made', args, { part, of }, terminal)
  } finally {
    source.value.close()
  }
}

const tellRecord = (record: PassRecord, out: string, terminal: Terminal): void => {
  const { output, findings, heldFrames } = record
  terminal.print(
    `Wrote ${out}: ${output.frames} ${output.frames === 1 ? 'frame' : 'frames'}, ${output.bytes} bytes`,
  )
  terminal.print(`SHA-256 ${output.sha256}`)
  for (const { check, standing, says } of findings)
    terminal.print(`${check}: ${standing === 'wrong' ? 'WRONG' : standing}: ${says}`)
  if (heldFrames.length > 0)
    terminal.note(`Frames that could not be decoded show the one before: ${heldFrames.join(', ')}`)
}

const runWhole = async (wishes: Wishes, terminal: Terminal): Promise<Result<ExitStatus>> => {
  const { names, job, jobPath, out, workers, args } = wishes
  const begunAt = new Date().toISOString()
  const task = await transferTask(names)
  if (!task.ok) return task
  const reason = textOption(args, 'override')
  const reading = createPaceKeeper(task.value.plan.reel.media.bytes, () => performance.now())
  const before = await beforePass(job, task.value, out, reason, (done) =>
    terminal.pace('Reading the scan for its checksum', reading(done)),
  )
  if (!before.ok) return before
  for (const { standing, says } of before.value.items)
    if (standing === 'not known') terminal.note(`Not known: ${says}`)
  const joined = await wholePass(names, task.value, {
    ...{ out, workers, resumes: Boolean(args.values.resume) },
    onPace: terminal.pace,
    note: terminal.note,
  })
  if (!joined.ok) return joined
  const { parts } = joined.value
  const { overrides } = before.value
  const made = { task: task.value, out, parts, begunAt, overrides }
  const record = await afterPass(made, PROGRAM_VERSION, (pace) =>
    terminal.pace('Reading back', pace),
  )
  if (!record.ok) return record
  terminal.clearPace()
  if (args.values.record) {
    const kept = await changeJobFile(jobPath, (now) => addPass(now, record.value), [])
    if (!kept.ok) return kept
    terminal.note(`Recorded in ${jobPath}.`)
  }
  if (args.values.json) terminal.json({ written: out, pass: record.value })
  else tellRecord(record.value, out, terminal)
  return ok(passStanding(record.value.findings) === 'right' ? EXIT.fine : EXIT.outside)
}

/** Makes the transfer of a job's reel, or one part of it. */
export const transferCommand = async (
  argv: readonly string[],
  terminal: Terminal,
): Promise<Result<ExitStatus>> => {
  const text = { type: 'string' } as const
  const yes = { type: 'boolean' } as const
  const options = {
    ...{ out: text, reel: text, media: text, format: text, part: text, workers: text },
    ...{ override: text, resume: yes, record: yes, json: yes },
  }
  const args = readArguments(argv, options, TRANSFER_USAGE)
  if (!args.ok) return args
  const wishes = await readWishes(args.value)
  if (!wishes.ok) return wishes
  const { part } = wishes.value
  return part ? runPart(wishes.value, part, terminal) : runWhole(wishes.value, terminal)
}
