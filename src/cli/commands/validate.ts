import { problem } from '../../core/base/problem.ts'
import { fail, ok, type Result } from '../../core/base/result.ts'
import { readClf } from '../../core/formats/clf/readClf.ts'
import type { DecisionList } from '../../core/formats/decisionList.ts'
import { handOverFiles } from '../../core/formats/handOverFiles.ts'
import { HAND_OVER_FORMATS, type HandOverFormat } from '../../core/formats/handOverFormats.ts'
import { readJob } from '../../core/formats/job/readJob.ts'
import { readList } from '../../core/formats/readList.ts'
import { sniffText } from '../../core/formats/sniffText.ts'
import { cuesOfReel } from '../../core/job/cueList.ts'
import type { Job, Reel } from '../../core/job/job.ts'
import { framesPerSecond, type Rate } from '../../core/time/rate.ts'
import { openMediaNode } from '../../media/node/openMediaNode.ts'
import { SNIFFED_BYTES, sniffContainer } from '../../media/sniffContainer.ts'
import { textOfBytes, utf8Text } from '../../media/textOfBytes.ts'
import { readArguments, wrongUse } from '../arguments.ts'
import { EXIT, type ExitStatus } from '../exitStatus.ts'
import { ofFile, readBytes } from '../readBytes.ts'
import { problemText, type Terminal } from '../terminal.ts'

export const VALIDATE_USAGE = 'reelwright validate FILE [--json]'

/** What a file is and what of it would be lost, for a person and as data. */
type Finding = { readonly lines: readonly string[]; readonly told: object }

const counted = (count: number, one: string, many = `${one}s`): string =>
  `${count} ${count === 1 ? one : many}`

const KINDS = {
  cdl: 'ASC CDL',
  edl: 'an edit decision list',
  otio: 'an OpenTimelineIO timeline',
  csv: 'a ledger as CSV',
} as const

/** Of event lines just the labels are known here: they fit a reel that counts faster as well. */
const rateLine = (format: DecisionList['format'], rate: Rate): string =>
  format === 'edl'
    ? `Its labels fit ${framesPerSecond(rate)} frames a second; an import counts them as its reel does.`
    : `Its times are counted at ${framesPerSecond(rate)} frames a second.`

const ofList = (list: DecisionList): Finding => {
  const { format, title, rate, decisions, notTaken } = list
  const graded = decisions.filter(({ values }) => values.grade !== undefined).length
  const placed = decisions.filter((each) => each.recordSpan ?? each.sourceSpan).length
  const lines = [
    `This is ${KINDS[format]}${title === '' ? '' : `, “${title}”`}: ${counted(decisions.length, 'decision')}, ${graded} with a grade, ${placed} with a place.`,
    ...(rate ? [rateLine(list.format, rate)] : []),
    ...(notTaken.length === 0
      ? ['An import would lose nothing of it.']
      : notTaken.map((each) => `Not taken: ${problemText(each)}`)),
  ]
  return {
    lines,
    told: { format, title, rate, decisions: decisions.length, graded, placed, notTaken },
  }
}

const ofJob = (job: Job): Finding => {
  const reels = Object.values<Reel>(job.reels)
  const formats = Object.keys(HAND_OVER_FORMATS) as readonly HandOverFormat[]
  const losses = reels.flatMap((reel) =>
    formats.map((format) => {
      const made = handOverFiles(job, reel.id, format)
      return { reel: reel.id, format, losses: made.ok ? made.value.losses : [] }
    }),
  )
  return {
    lines: [
      `This is a Reelwright job, “${job.info.job.title}”: ${counted(reels.length, 'reel')}.`,
      ...reels.map(
        ({ id, name, frames }) =>
          `${name} (${id}): ${counted(cuesOfReel(job, id).length, 'cue')} on ${counted(frames, 'frame')}.`,
      ),
      ...losses.map(
        ({ reel, format, losses: each }) =>
          `${reel} as ${format} would lose: ${each.map(({ subject }) => subject.toLowerCase()).join(', ') || 'nothing'}.`,
      ),
    ],
    told: { format: 'job', title: job.info.job.title, reels: reels.map(({ id }) => id), losses },
  }
}

const ofProcessList = (text: string): Result<Finding> => {
  const read = readClf(text)
  if (!read.ok) return read
  const { list, notTaken } = read.value
  return ok({
    lines: [
      `This is a Common LUT Format process list, “${list.name}”: ${list.steps.map(({ kind }) => kind).join(', ')}.`,
      ...(notTaken.length === 0
        ? ['A base would carry all of it.']
        : notTaken.map((each) => `Not taken: ${problemText(each)}`)),
    ],
    told: { format: 'clf', name: list.name, steps: list.steps.map(({ kind }) => kind), notTaken },
  })
}

const ofMedia = async (path: string): Promise<Result<Finding>> => {
  const opened = await openMediaNode(path)
  if (!opened.ok) return opened
  const { facts } = opened.value
  opened.value.close()
  const { container, codec, width, height, depth, layout, frames, rate } = facts
  return ok({
    lines: [
      `This is a scan: ${container}, ${codec}, ${width} × ${height}, ${depth} bits, ${layout}, ${counted(frames, 'frame')}${rate ? ` at ${framesPerSecond(rate)} a second` : ''}.`,
    ],
    told: { format: 'scan', ...facts },
  })
}

const findingOf = async (path: string): Promise<Result<Finding>> => {
  const bytes = await readBytes(path)
  if (!bytes.ok) return bytes
  if (sniffContainer(bytes.value.subarray(0, SNIFFED_BYTES)) !== undefined) return ofMedia(path)
  const { text, told } = textOfBytes(bytes.value)
  const kind = sniffText(text)
  if (kind === undefined)
    return fail(
      problem(
        'unknown-format',
        `${path} is nothing this program reads: no job, list, process list or scan.`,
        { file: path, line: 1 },
      ),
    )
  if (kind === 'job') {
    const whole = ofFile(utf8Text(bytes.value, path), path)
    if (!whole.ok) return whole
    const job = ofFile(readJob(whole.value), path)
    return job.ok ? ok(ofJob(job.value)) : job
  }
  if (kind === 'clf') return ofFile(ofProcessList(text), path)
  const list = ofFile(readList(path, text, undefined), path)
  if (!list.ok) return list
  return ok(ofList({ ...list.value, notTaken: [...told, ...list.value.notTaken] }))
}

/** Says what a file is, whether it is well formed, and what of it would be lost. */
export const validateCommand = async (
  argv: readonly string[],
  terminal: Terminal,
): Promise<Result<ExitStatus>> => {
  const args = readArguments(argv, { json: { type: 'boolean' } }, VALIDATE_USAGE)
  if (!args.ok) return args
  const [path, ...more] = args.value.positionals
  if (path === undefined || more.length > 0) return wrongUse('Give one file.', VALIDATE_USAGE)
  const finding = await findingOf(path)
  if (!finding.ok) return finding
  if (args.value.values.json) terminal.json({ file: path, valid: true, ...finding.value.told })
  else for (const line of finding.value.lines) terminal.print(line)
  return ok(EXIT.fine)
}
