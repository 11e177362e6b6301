import { dirname, join } from 'node:path'
import { ok, type Result } from '../../core/base/result.ts'
import { PRINT_BASE } from '../../core/film/filmBase.ts'
import { FLASH_CAUTION } from '../../core/flashes/caution.ts'
import { flashesOfCue } from '../../core/flashes/flashesOfCue.ts'
import { type FlashReport, isWithinFlashLimits } from '../../core/flashes/flashReport.ts'
import { FLASH_METHOD, FLASH_NAMES, flashWords, longWords } from '../../core/flashes/flashWords.ts'
import { codingOf } from '../../core/job/codingOf.ts'
import { cueEnd, cuesOfReel } from '../../core/job/cueList.ts'
import type { Cue, Reel } from '../../core/job/job.ts'
import { newCue } from '../../core/job/newCue.ts'
import type { CueId, ReelId } from '../../core/job/recordIds.ts'
import { type Frame, frame } from '../../core/time/frame.ts'
import { type Rate, rate } from '../../core/time/rate.ts'
import { formatTimecode } from '../../core/time/timecode.ts'
import { openMediaNode } from '../../media/node/openMediaNode.ts'
import { checkFlashes } from '../../work/checkFlashes.ts'
import { createPaceKeeper } from '../../work/pace.ts'
import { readArguments, textOption, wrongUse } from '../arguments.ts'
import { chooseReel } from '../chooseReel.ts'
import { EXIT, type ExitStatus } from '../exitStatus.ts'
import { kernelHere } from '../kernelHere.ts'
import { likelyCodingOf } from '../likelyCodingOf.ts'
import { readJobFile } from '../readJobFile.ts'
import type { Terminal } from '../terminal.ts'

export const FLASHES_USAGE = 'reelwright flashes JOB|MEDIA [--reel ID] [--media FILE] [--json]'

/** What is to be watched: the cues of a job's reel, or a scan as one cue as it is. */
type Task = {
  readonly mediaPath: string
  readonly cues: readonly Cue[]
  readonly reel: Reel | undefined
}

/** A cue, what was found in it, and its frames up to `end`. */
type Watched = { readonly cue: Cue; readonly end: Frame; readonly report: FlashReport }

type Timecode = (of: Frame) => string

/** The rate of a scan that states none. */
const UNSTATED_RATE = rate(25)

const taskOf = async (
  path: string,
  reelName: string | undefined,
  mediaPath: string | undefined,
): Promise<Result<Task>> => {
  if (!/\.json$/iu.test(path)) {
    if (reelName !== undefined || mediaPath !== undefined)
      return wrongUse('A scan is watched as it is: leave out --reel and --media.', FLASHES_USAGE)
    const whole = newCue('reel' as CueId, 'reel' as ReelId, frame(0), {
      kind: 'start',
      confidence: 1,
    })
    return ok({ mediaPath: path, cues: [whole], reel: undefined })
  }
  const job = await readJobFile(path)
  if (!job.ok) return job
  const reel = chooseReel(job.value, reelName, FLASHES_USAGE)
  if (!reel.ok) return reel
  return ok({
    mediaPath: mediaPath ?? join(dirname(path), reel.value.media.name),
    cues: cuesOfReel(job.value, reel.value.id),
    reel: reel.value,
  })
}

/** Tells of flashes and stripes in what a job would deliver, or in a scan as it is. */
export const flashesCommand = async (
  argv: readonly string[],
  terminal: Terminal,
): Promise<Result<ExitStatus>> => {
  const options = {
    reel: { type: 'string' },
    media: { type: 'string' },
    json: { type: 'boolean' },
  } as const
  const args = readArguments(argv, options, FLASHES_USAGE)
  if (!args.ok) return args
  const [path, ...more] = args.value.positionals
  if (path === undefined || more.length > 0)
    return wrongUse('Give one job or one reel.', FLASHES_USAGE)
  const reelName = textOption(args.value, 'reel')
  const task = await taskOf(path, reelName, textOption(args.value, 'media'))
  if (!task.ok) return task
  const { mediaPath, cues, reel } = task.value
  const kernel = await kernelHere()
  if (!kernel.ok) return kernel
  const opened = await openMediaNode(mediaPath)
  if (!opened.ok) return opened
  const source = opened.value
  try {
    const { facts } = source
    if (!reel && !facts.rate)
      terminal.note(`${facts.name} states no rate; watched at 25 frames a second.`)
    const at = reel?.rate ?? facts.rate ?? UNSTATED_RATE
    const coding = reel ? codingOf(reel) : likelyCodingOf(source, PRINT_BASE, terminal)
    const checks = cues.map((cue, i) => ({
      cue,
      previous: cues[i - 1],
      end: frame(cueEnd(cues, i, facts.frames)),
    }))
    const pace = createPaceKeeper(facts.frames, () => performance.now())
    const request = { checks, coding, rate: at }
    const report = await checkFlashes(source, kernel.value, request, (done) =>
      terminal.pace('Watching', pace(done)),
    )
    terminal.clearPace()
    const watched = checks.flatMap(({ cue, end }) =>
      report ? [{ cue, end, report: flashesOfCue(report, cue.first, end) }] : [],
    )
    const timecode: Timecode = (of) =>
      formatTimecode((reel?.startCount ?? 0) + of, at, reel?.isDropFrame ?? false)
    if (args.value.values.json) terminal.json(asJson(path, at, watched, timecode))
    else printed(watched, timecode, terminal)
    return ok(!report || isWithinFlashLimits(report) ? EXIT.fine : EXIT.outside)
  } finally {
    source.close()
  }
}

const asJson = (
  file: string,
  at: Rate,
  watched: readonly Watched[],
  timecode: Timecode,
): unknown => {
  const timed = <Span extends { readonly first: Frame; readonly last: Frame }>(span: Span) => ({
    ...span,
    firstTimecode: timecode(span.first),
    lastTimecode: timecode(span.last),
  })
  return {
    file,
    caution: FLASH_CAUTION,
    method: FLASH_METHOD,
    rate: at,
    within: watched.every(({ report }) => isWithinFlashLimits(report)),
    cues: watched.map(({ cue, report }, i) => ({
      cue: i + 1,
      id: cue.id,
      first: cue.first,
      timecode: timecode(cue.first),
      frames: report.frames,
      within: isWithinFlashLimits(report),
      breaches: report.breaches.map(timed),
      long: report.long.map(timed),
    })),
  }
}

const printed = (watched: readonly Watched[], timecode: Timecode, terminal: Terminal): void => {
  const span = ({ first, last }: { readonly first: Frame; readonly last: Frame }) =>
    `frames ${first}…${last}  ${timecode(first)}…${timecode(last)}`
  for (const [i, { cue, report }] of watched.entries()) {
    const name = `cue ${i + 1}  frame ${cue.first}`
    for (const breach of report.breaches)
      terminal.print(
        `${name}  ${FLASH_NAMES[breach.kind].toUpperCase()}  ${span(breach)}  ${flashWords(breach)}`,
      )
    for (const long of report.long)
      terminal.print(`${name}  caution  ${span(long)}  ${longWords(long)}`)
    if (report.breaches.length + report.long.length === 0) terminal.print(`${name}  nothing found`)
  }
  const over = watched.filter(({ report }) => !isWithinFlashLimits(report)).length
  terminal.print(
    over === 0 ? 'No limit is passed.' : `A limit is passed in ${over} of ${watched.length} cues.`,
  )
  terminal.print(FLASH_METHOD)
  terminal.print(`Caution: ${FLASH_CAUTION}`)
}
