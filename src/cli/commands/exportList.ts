import { dirname, join } from 'node:path'
import { ok, type Result } from '../../core/base/result.ts'
import { type HandOverFiles, handOverFiles } from '../../core/formats/handOverFiles.ts'
import { HAND_OVER_FORMATS, type HandOverFormat } from '../../core/formats/handOverFormats.ts'
import { JOB_VERSION } from '../../core/formats/job/migrations.ts'
import { writeJobAt } from '../../core/formats/job/writeJobAt.ts'
import { fileNameOf } from '../../core/formats/listNames.ts'
import { lossStatement } from '../../core/formats/lossStatement.ts'
import { isFileACue } from '../../core/formats/prepareFormat.ts'
import type { Job, Reel } from '../../core/job/job.ts'
import { type Arguments, readArguments, textOption, wrongUse } from '../arguments.ts'
import { chooseReel } from '../chooseReel.ts'
import { EXIT, type ExitStatus } from '../exitStatus.ts'
import { makeReportNode } from '../makeReport.ts'
import { readJobFile } from '../readJobFile.ts'
import type { Terminal } from '../terminal.ts'
import { notOver, writeFiles, writeWhole } from '../writeFiles.ts'

export const EXPORT_USAGE =
  'reelwright export JOB --as cc|ccc|cdl|edl|otio|clf|csv|html|job --out PATH [--reel ID] [--losses FILE] [--media FILE] [--measure] [--job-version N] [--json]'

const FORMATS: readonly string[] = [...Object.keys(HAND_OVER_FORMATS), 'html', 'job']

const isListFormat = (format: string): format is HandOverFormat =>
  Object.hasOwn(HAND_OVER_FORMATS, format)

/** What is exported of a job, and what was asked of it. */
type Task = {
  readonly job: Job
  readonly reel: Reel
  readonly path: string
  readonly args: Arguments
}

/** The report, with pictures and verdicts where the scan is there and they are wanted. */
const reportFiles = async (
  { job, reel, path, args }: Task,
  terminal: Terminal,
): Promise<Result<HandOverFiles>> => {
  const given = textOption(args, 'media')
  const wantsVerdicts = Boolean(args.values.measure)
  const make = (media: string | undefined) =>
    makeReportNode(job, reel.id, media, wantsVerdicts, (pace) =>
      terminal.pace('Making the report', pace),
    )
  let made = await make(given ?? join(dirname(path), reel.media.name))
  terminal.clearPace()
  if (!made.ok && given === undefined && !wantsVerdicts) {
    terminal.problems(made.problems)
    terminal.note('The report has no pictures: say where the scan is with --media.')
    made = await make(undefined)
  }
  return made.ok ? ok({ files: [made.value], losses: [] }) : made
}

/** The job itself, in the version asked for. */
const jobFiles = ({ job, reel, args }: Task): Result<HandOverFiles> => {
  const asked = textOption(args, 'job-version') ?? String(JOB_VERSION)
  const version = /^\d{1,3}$/u.test(asked) ? Number(asked) : 0
  if (version < 1 || version > JOB_VERSION)
    return wrongUse(`Give --job-version a number from 1 to ${JOB_VERSION}.`, EXPORT_USAGE)
  const { text, losses } = writeJobAt(job, version)
  return ok({ files: [{ name: `${fileNameOf(reel)}.reelwright.json`, text }], losses })
}

const filesAs = (
  format: string,
  task: Task,
  terminal: Terminal,
): Result<HandOverFiles> | Promise<Result<HandOverFiles>> => {
  if (isListFormat(format)) return handOverFiles(task.job, task.reel.id, format)
  return format === 'job' ? jobFiles(task) : reportFiles(task, terminal)
}

const titleOf = (format: string): string => {
  if (isListFormat(format)) return HAND_OVER_FORMATS[format].title
  return format === 'job' ? 'The job' : 'Report'
}

/** Writes a job's cues in an open format, and says what it cannot carry. */
export const exportCommand = async (
  argv: readonly string[],
  terminal: Terminal,
): Promise<Result<ExitStatus>> => {
  const text = { type: 'string' } as const
  const options = {
    ...{ as: text, out: text, reel: text, losses: text, media: text, 'job-version': text },
    measure: { type: 'boolean' },
    json: { type: 'boolean' },
  } as const
  const args = readArguments(argv, options, EXPORT_USAGE)
  if (!args.ok) return args
  const [path, ...more] = args.value.positionals
  const format = textOption(args.value, 'as')
  const out = textOption(args.value, 'out')
  const statement = textOption(args.value, 'losses')
  if (path === undefined || more.length > 0) return wrongUse('Give one job.', EXPORT_USAGE)
  if (format === undefined || !FORMATS.includes(format))
    return wrongUse(`Say --as ${FORMATS.join(', ')}.`, EXPORT_USAGE)
  if (out === undefined) return wrongUse('Say where to write with --out PATH.', EXPORT_USAGE)
  const job = await readJobFile(path)
  if (!job.ok) return job
  const reel = chooseReel(job.value, textOption(args.value, 'reel'), EXPORT_USAGE)
  if (!reel.ok) return reel
  const task = { job: job.value, reel: reel.value, path, args: args.value }
  const made = await filesAs(format, task, terminal)
  if (!made.ok) return made
  const { files, losses } = made.value
  const inputs = [
    path,
    textOption(args.value, 'media') ?? join(dirname(path), reel.value.media.name),
  ]
  const free = await notOver(statement === undefined ? [] : [statement], inputs)
  if (!free.ok) return free
  const isFolder = isListFormat(format) && isFileACue(format)
  const written = await writeFiles(files, out, isFolder, inputs)
  if (!written.ok) return written
  if (statement !== undefined) {
    const names = files.map(({ name }) => name)
    const parts = [{ title: titleOf(format), files: names, losses }]
    const told = await writeWhole(statement, lossStatement(job.value, reel.value.id, parts))
    if (!told.ok) return told
  }
  if (args.value.values.json) terminal.json({ written: written.value, losses })
  else {
    for (const target of written.value) terminal.print(`Wrote ${target}`)
    for (const loss of losses) terminal.note(`Not carried: ${loss.says} ${loss.done}`)
  }
  return ok(EXIT.fine)
}
