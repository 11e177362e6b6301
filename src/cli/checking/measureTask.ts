import { ok, type Result } from '../../core/base/result.ts'
import { type FilmBase, PRINT_BASE } from '../../core/film/filmBase.ts'
import { cueEnd } from '../../core/job/cueList.ts'
import type { Cue } from '../../core/job/job.ts'
import { profileByName, profilesWith } from '../../core/tolerance/findProfile.ts'
import type { ToleranceProfile } from '../../core/tolerance/profile.ts'
import type { Verdict } from '../../core/tolerance/verdict.ts'
import type { Kernel } from '../../kernel/kernel.ts'
import { openMediaNode } from '../../media/node/openMediaNode.ts'
import { checkCue } from '../../work/checkTolerance.ts'
import { createPaceKeeper } from '../../work/pace.ts'
import { wrongUse } from '../arguments.ts'
import { likelyCodingOf } from '../likelyCodingOf.ts'
import type { Terminal } from '../terminal.ts'
import { type CheckTask, isJob } from './checkTask.ts'

/** How tasks are measured, alike for all. */
export type CheckWish = {
  /** Name of a tolerance; undefined: the job's own. */
  readonly tolerance: string | undefined
  /** What a scan without a job is; undefined: what it states. */
  readonly scan: string | undefined
  readonly usage: string
}

/** A reel that was measured. */
export type Checked = {
  readonly task: CheckTask
  readonly profile: ToleranceProfile
  readonly measured: readonly { readonly cue: Cue; readonly verdict: Verdict }[]
  readonly isInside: boolean
}

/** The base a scan without a job is read by. A negative has numbers that only a job holds. */
const baseOf = ({ scan, usage }: CheckWish, path: string): Result<FilmBase> => {
  if (scan === undefined) return ok(PRINT_BASE)
  if (isJob(path)) return wrongUse('A job says itself what its scan is: leave out --scan.', usage)
  if (scan === 'negative')
    return wrongUse('A negative needs its clear film and gamma: check a job of it.', usage)
  return scan === 'print' || scan === 'printing-density'
    ? ok({ ...PRINT_BASE, scan })
    : wrongUse(`--scan is print or printing-density, not “${scan}”.`, usage)
}

/** The tolerance that a task is held to. */
const profileFor = ({ tolerance, usage }: CheckWish, task: CheckTask): Result<ToleranceProfile> => {
  const name = tolerance ?? task.tolerance
  const profile = profileByName(name, task.house)
  if (profile) return ok(profile)
  const known = profilesWith(task.house)
    .map((each) => each.name)
    .join(', ')
  return wrongUse(`There is no tolerance “${name}”; there are: ${known}.`, usage)
}

/** Measures a reel cue by cue; its scan is open only meanwhile. */
export const measureTask = async (
  task: CheckTask,
  wish: CheckWish,
  kernel: () => Promise<Result<Kernel>>,
  terminal: Terminal,
): Promise<Result<Checked>> => {
  const base = baseOf(wish, task.path)
  if (!base.ok) return base
  const profile = profileFor(wish, task)
  if (!profile.ok) return profile
  const loaded = await kernel()
  if (!loaded.ok) return loaded
  const opened = await openMediaNode(task.mediaPath)
  if (!opened.ok) return opened
  const source = opened.value
  try {
    const stated = wish.scan === undefined && source.facts.scanHint
    const read = stated ? { ...base.value, scan: stated } : base.value
    const coding = task.coding ?? likelyCodingOf(source, read, terminal)
    const { cues } = task
    const pace = createPaceKeeper(source.facts.frames, () => performance.now())
    let done = 0
    const measured: { cue: Cue; verdict: Verdict }[] = []
    for (const [index, cue] of cues.entries()) {
      const check = {
        cue,
        previous: cues[index - 1],
        end: cueEnd(cues, index, source.facts.frames),
      }
      const verdict = await checkCue(source, loaded.value, check, coding, profile.value, () => {
        done++
        terminal.pace('Measuring', pace(done))
      })
      if (verdict) measured.push({ cue, verdict })
    }
    terminal.clearPace()
    const isInside = measured.every(({ verdict }) => verdict.isInside)
    return ok({ task, profile: profile.value, measured, isInside })
  } finally {
    source.close()
  }
}
