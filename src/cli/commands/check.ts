import { dirname, join } from 'node:path'
import { problem } from '../../core/base/problem.ts'
import { fail, ok, type Result } from '../../core/base/result.ts'
import { type FilmBase, PRINT_BASE } from '../../core/film/filmBase.ts'
import { codingOf } from '../../core/job/codingOf.ts'
import { cueEnd, cuesOfReel } from '../../core/job/cueList.ts'
import type { Cue } from '../../core/job/job.ts'
import { likelyCoding } from '../../core/job/likelyCoding.ts'
import { newCue } from '../../core/job/newCue.ts'
import type { CueId, ReelId } from '../../core/job/recordIds.ts'
import type { Coding } from '../../core/picture/planes.ts'
import { frame } from '../../core/time/frame.ts'
import { profileByName, profilesWith } from '../../core/tolerance/findProfile.ts'
import { EBU_R103_V3, type ToleranceProfile } from '../../core/tolerance/profile.ts'
import type { Verdict } from '../../core/tolerance/verdict.ts'
import type { FrameSource } from '../../media/frameSource.ts'
import { openMediaNode } from '../../media/node/openMediaNode.ts'
import { checkCue } from '../../work/checkTolerance.ts'
import { createPaceKeeper } from '../../work/pace.ts'
import { readArguments, textOption, wrongUse } from '../arguments.ts'
import { EXIT, type ExitStatus } from '../exitStatus.ts'
import { kernelHere } from '../kernelHere.ts'
import { readJobFile } from '../readJobFile.ts'
import type { Terminal } from '../terminal.ts'

export const CHECK_USAGE =
  'reelwright check JOB|MEDIA [--tolerance NAME] [--media FILE] [--scan print|printing-density] [--json]'

/** What is to be measured: the cues of a job's reel, or a scan as one cue as it is. */
type Task = {
  readonly mediaPath: string
  readonly cues: readonly Cue[]
  readonly coding: Coding | undefined
  readonly tolerance: string
  /** The job's own tolerances. */
  readonly house: readonly ToleranceProfile[]
}

const isJob = (path: string): boolean => /\.json$/iu.test(path)

const taskOf = async (path: string, mediaPath: string | undefined): Promise<Result<Task>> => {
  if (!isJob(path))
    return ok({
      mediaPath: path,
      cues: [newCue('reel' as CueId, 'reel' as ReelId, frame(0), { kind: 'start', confidence: 1 })],
      coding: undefined,
      tolerance: EBU_R103_V3.id,
      house: [],
    })
  const job = await readJobFile(path)
  if (!job.ok) return job
  const reel = Object.values(job.value.reels)[0]
  if (!reel) return fail(problem('missing', `${path} holds no reel to check.`))
  return ok({
    mediaPath: mediaPath ?? join(dirname(path), reel.media.name),
    cues: cuesOfReel(job.value, reel.id),
    coding: codingOf(reel),
    tolerance: job.value.info.job.tolerance,
    house: job.value.info.job.profiles,
  })
}

/** The base a scan without a job is read by. A negative has numbers that only a job holds. */
const baseOf = (scan: string | undefined, path: string): Result<FilmBase> => {
  if (scan === undefined) return ok(PRINT_BASE)
  if (isJob(path))
    return wrongUse('A job says itself what its scan is: leave out --scan.', CHECK_USAGE)
  if (scan === 'negative')
    return wrongUse('A negative needs its clear film and gamma: check a job of it.', CHECK_USAGE)
  return scan === 'print' || scan === 'printing-density'
    ? ok({ ...PRINT_BASE, scan })
    : wrongUse(`--scan is print or printing-density, not “${scan}”.`, CHECK_USAGE)
}

/** How a scan without a job is read, told where it does not state all of it. */
export const likelyCodingOf = (
  { facts }: FrameSource,
  base: FilmBase,
  terminal: Terminal,
): Coding => {
  const likely = likelyCoding(facts.height, facts.layout !== 'rgb')
  const coding = { matrix: facts.matrix ?? likely.matrix, range: facts.range ?? likely.range, base }
  if (facts.layout !== 'rgb' && (facts.matrix === undefined || facts.range === undefined))
    terminal.note(
      `${facts.name} does not state all of its coding; read as ${coding.matrix}, ${coding.range} range.`,
    )
  if (facts.scanHint !== undefined && base.scan === facts.scanHint)
    terminal.note(`${facts.name} states printing density; read as that.`)
  return coding
}

const percent = (level: number): string => (level * 100).toFixed(1)

const filterWords = ({ filtered }: ToleranceProfile): string =>
  filtered ? 'after the filter' : 'unfiltered'

const cueLine = (number: number, cue: Cue, verdict: Verdict, profile: ToleranceProfile): string => {
  const span = ({ low, high }: Verdict['r']) => `${percent(low)}…${percent(high)}`
  const composite = verdict.composite ? `  luma plus chroma ${span(verdict.composite)}` : ''
  return [
    `cue ${number}`,
    `frame ${cue.first}`,
    verdict.isInside ? 'inside' : 'OUTSIDE',
    `${(verdict.areaOutside * 100).toFixed(2)} % of area`,
    `R ${span(verdict.r)}  G ${span(verdict.g)}  B ${span(verdict.b)}  Y ${span(verdict.y)}${composite} %`,
    filterWords(profile),
    `worst frame ${verdict.worstFrame}`,
  ].join('  ')
}

/** Measures a job's cues, or a scan as it is, against a broadcast tolerance. */
export const checkCommand = async (
  argv: readonly string[],
  terminal: Terminal,
): Promise<Result<ExitStatus>> => {
  const options = {
    tolerance: { type: 'string' },
    media: { type: 'string' },
    scan: { type: 'string' },
    json: { type: 'boolean' },
  } as const
  const args = readArguments(argv, options, CHECK_USAGE)
  if (!args.ok) return args
  const [path, ...more] = args.value.positionals
  if (path === undefined || more.length > 0)
    return wrongUse('Give one job or one reel.', CHECK_USAGE)
  const base = baseOf(textOption(args.value, 'scan'), path)
  if (!base.ok) return base
  const task = await taskOf(path, textOption(args.value, 'media'))
  if (!task.ok) return task
  const name = textOption(args.value, 'tolerance') ?? task.value.tolerance
  const { house } = task.value
  const profile = profileByName(name, house)
  if (!profile) {
    const known = profilesWith(house)
      .map((each) => each.name)
      .join(', ')
    return wrongUse(`There is no tolerance “${name}”; there are: ${known}.`, CHECK_USAGE)
  }
  const kernel = await kernelHere()
  if (!kernel.ok) return kernel
  if (kernel.value.isReference)
    terminal.note(
      'This Node cannot run the kernel (WebAssembly SIMD): levels are exact, but measuring is slow.',
    )
  const opened = await openMediaNode(task.value.mediaPath)
  if (!opened.ok) return opened
  const source = opened.value
  try {
    const stated = textOption(args.value, 'scan') === undefined && source.facts.scanHint
    const read = stated ? { ...base.value, scan: stated } : base.value
    const coding = task.value.coding ?? likelyCodingOf(source, read, terminal)
    const { cues } = task.value
    const pace = createPaceKeeper(source.facts.frames, () => performance.now())
    let done = 0
    const measured: { cue: Cue; verdict: Verdict }[] = []
    for (const [index, cue] of cues.entries()) {
      const check = {
        cue,
        previous: cues[index - 1],
        end: cueEnd(cues, index, source.facts.frames),
      }
      const verdict = await checkCue(source, kernel.value, check, coding, profile, () => {
        done++
        terminal.pace('Measuring', pace(done))
      })
      if (verdict) measured.push({ cue, verdict })
    }
    terminal.clearPace()
    return ok(report(path, profile, measured, Boolean(args.value.values.json), terminal))
  } finally {
    source.close()
  }
}

const report = (
  path: string,
  profile: ToleranceProfile,
  measured: readonly { readonly cue: Cue; readonly verdict: Verdict }[],
  isJson: boolean,
  terminal: Terminal,
): ExitStatus => {
  const isInside = measured.every(({ verdict }) => verdict.isInside)
  if (isJson)
    terminal.json({
      file: path,
      tolerance: profile.id,
      filtered: profile.filtered,
      profile,
      inside: isInside,
      cues: measured.map(({ cue, verdict }, index) => ({
        cue: index + 1,
        id: cue.id,
        first: cue.first,
        frames: verdict.frames,
        inside: verdict.isInside,
        r: verdict.r,
        g: verdict.g,
        b: verdict.b,
        y: verdict.y,
        ...(verdict.composite && { composite: verdict.composite }),
        worstFrame: verdict.worstFrame,
        areaOutside: verdict.areaOutside,
        areaBelow: verdict.areaBelow,
        areaAbove: verdict.areaAbove,
        framesOutside: verdict.framesOutside,
      })),
    })
  else {
    for (const [index, { cue, verdict }] of measured.entries())
      terminal.print(cueLine(index + 1, cue, verdict, profile))
    const outside = measured.filter(({ verdict }) => !verdict.isInside).length
    terminal.print(
      `${profile.name}, levels and area ${filterWords(profile)}: ${isInside ? 'inside' : `${outside} of ${measured.length} cues outside`}`,
    )
  }
  return isInside ? EXIT.fine : EXIT.outside
}
