import { type Problem, problem } from '../base/problem.ts'
import type { Job } from '../job/job.ts'
import type { ReelId } from '../job/recordIds.ts'
import { cuePlacements } from '../shots/cuesFromBoundaries.ts'
import { findStretches } from './findStretches.ts'
import { followStretches } from './followStretches.ts'
import type { FoundStretch, ReconformPlan } from './reconformPlan.ts'
import type { ReelPrints } from './reelPrints.ts'

/**
 * How the cues of a reel follow their pictures to a new scan or cut of it, by the prints of both.
 * What was found may be given where it is known already. `undefined` where the reel is not in the
 * job.
 */
export const planReconform = (
  job: Job,
  reelId: ReelId,
  old: ReelPrints,
  fresh: ReelPrints,
  stretches: readonly FoundStretch[] = findStretches(old, fresh),
): ReconformPlan | undefined => {
  const reel = job.reels[reelId]
  if (!reel) return undefined
  const notTaken: readonly Problem[] =
    old.frames === reel.frames
      ? []
      : [
          problem(
            'conflict',
            `The reel has ${reel.frames} frames in the job, the scan looked at ${old.frames}; cues past its end are not found.`,
          ),
        ]
  const placements = cuePlacements(fresh.boundaries, fresh.frames)
  const within = stretches.flatMap((each) => {
    const to = Math.min(each.to, reel.frames + each.shift)
    return each.from < to ? [{ ...each, to }] : []
  })
  return followStretches(job, reel, within, fresh.frames, placements, notTaken)
}
