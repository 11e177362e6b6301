import { type Problem, problem } from '../base/problem.ts'
import { fail, ok, type Result } from '../base/result.ts'
import { codingOf } from '../job/codingOf.ts'
import { cuesOfReel } from '../job/cueList.ts'
import type { Cue, Job, Reel } from '../job/job.ts'
import type { ReelId } from '../job/recordIds.ts'
import type { Coding } from '../picture/planes.ts'
import { profileById, unknownTolerance } from '../tolerance/findProfile.ts'
import type { ToleranceProfile } from '../tolerance/profile.ts'
import { type OutputTimeline, outputTimeline } from './outputTimeline.ts'
import { isSequence, type TransferSettings } from './transferSettings.ts'

/** All that decides what a transfer of a reel writes, besides the scan. */
export type PassPlan = {
  /** Of the job, for the slate. */
  readonly title: string
  readonly reel: Reel
  readonly coding: Coding
  readonly cues: readonly Cue[]
  readonly profile: ToleranceProfile
  readonly settings: TransferSettings
  readonly timeline: OutputTimeline
}

/** Video of half the colour in each direction has whole pairs of pixels. */
const oddSize = ({ media: { width, height } }: Reel): Problem | undefined =>
  width % 2 === 0 && height % 2 === 0
    ? undefined
    : problem(
        'conflict',
        `A picture of ${width}×${height} cannot be written as video, which needs even numbers; transfer it to a sequence.`,
        { field: 'transfer.format' },
      )

/** The plan of a transfer of a reel as its settings, or `settings`, have it. */
export const passPlan = (
  job: Job,
  reelId: ReelId,
  settings?: TransferSettings,
): Result<PassPlan> => {
  const reel = job.reels[reelId]
  if (!reel) return fail(problem('not-found', 'This reel is no longer in the job.'))
  const { title, tolerance, profiles } = job.info.job
  const profile = profileById(tolerance, profiles)
  if (!profile) return fail(unknownTolerance(tolerance, profiles))
  const chosen = settings ?? reel.transfer
  const odd = isSequence(chosen.format) ? undefined : oddSize(reel)
  if (odd) return fail(odd)
  return ok({
    title,
    reel,
    coding: codingOf(reel),
    cues: cuesOfReel(job, reelId),
    profile,
    settings: chosen,
    timeline: outputTimeline(chosen, reel.rate, reel.frames),
  })
}
