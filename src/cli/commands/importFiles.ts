import { stat } from 'node:fs/promises'
import { basename } from 'node:path'
import { problem } from '../../core/base/problem.ts'
import { fail, ok, type Result } from '../../core/base/result.ts'
import type { ImportOptions, MatchBy } from '../../core/conform/importPlan.ts'
import { sniffText } from '../../core/formats/sniffText.ts'
import { cuesOfReel } from '../../core/job/cueList.ts'
import type { Job, Reel } from '../../core/job/job.ts'
import { frame } from '../../core/time/frame.ts'
import { parsePosition } from '../../core/time/parsePosition.ts'
import { SNIFFED_BYTES, sniffContainer } from '../../media/sniffContainer.ts'
import { textOfBytes } from '../../media/textOfBytes.ts'
import { type Arguments, readArguments, textOption, wrongUse } from '../arguments.ts'
import { chooseReel } from '../chooseReel.ts'
import { EXIT, type ExitStatus } from '../exitStatus.ts'
import { importList } from '../importing/importList.ts'
import { importProcessList } from '../importing/importProcessList.ts'
import { importScan } from '../importing/importScan.ts'
import type { ImportStep, ImportTask } from '../importing/importStep.ts'
import { readBytes } from '../readBytes.ts'
import { readJobFile } from '../readJobFile.ts'
import type { Terminal } from '../terminal.ts'
import { stillAsRead, writeJobFile } from '../writeJobFile.ts'

export const IMPORT_USAGE =
  'reelwright import FILE… --into JOB [--reel ID] [--match timecode|name|order] [--times record|source] [--starts-at PLACE] [--take places|grades|both] [--cue NUMBER] [--media OLD-SCAN] [--by LIST] [--out JOB] [--dry-run] [--json]'

const MATCHES: readonly string[] = ['timecode', 'name', 'order'] satisfies readonly MatchBy[]

const isMatch = (text: string): text is MatchBy => MATCHES.includes(text)

/** What the person said of how a list is taken; the rest is suggested for each list. */
const askedOptions = (args: Arguments, reel: Reel): Result<Partial<ImportOptions>> => {
  const match = textOption(args, 'match')
  if (match !== undefined && !isMatch(match))
    return wrongUse(`Say --match ${MATCHES.join(', ')}.`, IMPORT_USAGE)
  const times = textOption(args, 'times')
  if (times !== undefined && times !== 'record' && times !== 'source')
    return wrongUse('Say --times record or --times source.', IMPORT_USAGE)
  const take = textOption(args, 'take')
  if (take !== undefined && take !== 'places' && take !== 'grades' && take !== 'both')
    return wrongUse('Say --take places, grades or both.', IMPORT_USAGE)
  const begins = textOption(args, 'starts-at')
  const startsAt = begins === undefined ? undefined : parsePosition(begins, reel, frame(0))
  if (startsAt && !startsAt.ok) return wrongUse(startsAt.problems[0].says, IMPORT_USAGE)
  return ok({
    ...(match !== undefined && { matchBy: match }),
    ...(times !== undefined && { times }),
    ...(startsAt && { startsAt: startsAt.value }),
    ...(take !== undefined && { takesPlaces: take !== 'grades', takesGrades: take !== 'places' }),
  })
}

/** Whether a path is a folder of pictures or a sequence's name with `####` for its numbers. */
const isPicturesPath = async (path: string): Promise<boolean> =>
  /#+/u.test(basename(path)) || ((await stat(path).catch(() => undefined))?.isDirectory() ?? false)

const importOne = async (
  task: ImportTask,
  args: Arguments,
  terminal: Terminal,
): Promise<Result<ImportStep>> => {
  const asScan = () =>
    importScan(task, { media: textOption(args, 'media'), by: textOption(args, 'by') }, terminal)
  if (await isPicturesPath(task.path)) return asScan()
  const bytes = await readBytes(task.path)
  if (!bytes.ok) return bytes
  if (sniffContainer(bytes.value.subarray(0, SNIFFED_BYTES)) !== undefined) return asScan()
  const read = textOfBytes(bytes.value)
  const kind = sniffText(read.text)
  if (kind === 'job')
    return fail(
      problem('wrong-use', `${task.path} is a job, not a list; open it by itself.`, {
        file: task.path,
      }),
    )
  if (kind === 'clf') {
    const cue = textOption(args, 'cue')
    const cues = cuesOfReel(task.job, task.reel.id).length
    if (cue !== undefined && !(/^[1-9]\d*$/u.test(cue) && Number(cue) <= cues))
      return wrongUse(`Give --cue the number of a cue, from 1 to ${cues}.`, IMPORT_USAGE)
    return importProcessList(task, read.text, cue === undefined ? undefined : Number(cue))
  }
  if (textOption(args, 'cue') !== undefined)
    return wrongUse('--cue is for process lists (.clf); leave it out.', IMPORT_USAGE)
  const asked = askedOptions(args, task.reel)
  return asked.ok ? importList(task, read, asked.value) : asked
}

/**
 * Brings lists, process lists and re-scans into a job, one after another. The job file is written
 * once, when every file has been taken, or not at all.
 */
export const importCommand = async (
  argv: readonly string[],
  terminal: Terminal,
): Promise<Result<ExitStatus>> => {
  const text = { type: 'string' } as const
  const options = {
    ...{ into: text, reel: text, match: text, times: text, 'starts-at': text, take: text },
    ...{ cue: text, media: text, by: text, out: text },
    'dry-run': { type: 'boolean' },
    json: { type: 'boolean' },
  } as const
  const args = readArguments(argv, options, IMPORT_USAGE)
  if (!args.ok) return args
  const paths = args.value.positionals
  const into = textOption(args.value, 'into')
  if (paths.length === 0) return wrongUse('Give a list to import.', IMPORT_USAGE)
  if (into === undefined) return wrongUse('Say which job with --into JOB.', IMPORT_USAGE)
  const before = await readJobFile(into)
  if (!before.ok) return before
  let job: Job = before.value
  const steps: ImportStep[] = []
  for (const path of paths) {
    const reel = chooseReel(job, textOption(args.value, 'reel'), IMPORT_USAGE)
    if (!reel.ok) return reel
    const step = await importOne({ job, reel: reel.value, path, into }, args.value, terminal)
    if (!step.ok) return step
    job = step.value.job
    steps.push(step.value)
  }
  const isDry = Boolean(args.value.values['dry-run'])
  const target = textOption(args.value, 'out') ?? into
  if (!isDry) {
    const asRead = await stillAsRead(into, before.value)
    if (!asRead.ok) return asRead
    const written = await writeJobFile(target, job, paths)
    if (!written.ok) return written
  }
  if (args.value.values.json)
    terminal.json({
      job: target,
      written: !isDry,
      files: paths.map((path, index) => ({ file: path, ...(steps[index]?.told as object) })),
    })
  else {
    for (const { lines } of steps) for (const line of lines) terminal.print(line)
    terminal.print(isDry ? 'Nothing was written: a dry run.' : `Wrote ${target}`)
  }
  return ok(EXIT.fine)
}
