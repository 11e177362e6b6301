import { dirname, join } from 'node:path'
import { problem } from '../../core/base/problem.ts'
import { fail, ok, type Result } from '../../core/base/result.ts'
import { codingOf } from '../../core/job/codingOf.ts'
import { cuesOfReel } from '../../core/job/cueList.ts'
import type { Cue } from '../../core/job/job.ts'
import { newCue } from '../../core/job/newCue.ts'
import type { CueId, ReelId } from '../../core/job/recordIds.ts'
import type { Coding } from '../../core/picture/planes.ts'
import { frame } from '../../core/time/frame.ts'
import { EBU_R103_V3, type ToleranceProfile } from '../../core/tolerance/profile.ts'
import { readJobFile } from '../readJobFile.ts'

/** What is to be measured: the cues of a job's reel, or a scan as one cue as it is. */
export type CheckTask = {
  /** The job or scan, as it was named. */
  readonly path: string
  /** The reel's name; '' of a scan without a job. */
  readonly reel: string
  readonly mediaPath: string
  readonly cues: readonly Cue[]
  readonly coding: Coding | undefined
  readonly tolerance: string
  /** The job's own tolerances. */
  readonly house: readonly ToleranceProfile[]
}

export const isJob = (path: string): boolean => /\.json$/iu.test(path)

/** The reels of a job, or a scan, each to be measured; `mediaPath` where a scan lies elsewhere. */
export const checkTasks = async (
  path: string,
  mediaPath: string | undefined,
): Promise<Result<readonly [CheckTask, ...CheckTask[]]>> => {
  if (!isJob(path)) {
    const whole = { kind: 'start', confidence: 1 } as const
    const cues = [newCue('reel' as CueId, 'reel' as ReelId, frame(0), whole)]
    const tolerance = EBU_R103_V3.id
    return ok([{ path, reel: '', mediaPath: path, cues, coding: undefined, tolerance, house: [] }])
  }
  const job = await readJobFile(path)
  if (!job.ok) return job
  const { tolerance, profiles } = job.value.info.job
  const [first, ...rest] = Object.values(job.value.reels).map(
    (reel): CheckTask => ({
      path,
      reel: reel.name,
      mediaPath: mediaPath ?? join(dirname(path), reel.media.name),
      cues: cuesOfReel(job.value, reel.id),
      coding: codingOf(reel),
      tolerance,
      house: profiles,
    }),
  )
  return first ? ok([first, ...rest]) : fail(problem('missing', `${path} holds no reel to check.`))
}
