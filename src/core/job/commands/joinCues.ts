import { problem } from '../../base/problem.ts'
import { fail, ok, type Result } from '../../base/result.ts'
import { cueChange } from '../change.ts'
import type { LabelledChange } from '../history.ts'
import type { Job } from '../job.ts'
import type { CueId } from '../recordIds.ts'
import { cuesById } from './cueCommand.ts'

/**
 * Takes away these cues: each one's frames go to the cue before it. The first cue of a reel has
 * none before it and cannot go.
 */
export const joinCues = (
  job: Job,
  ids: readonly CueId[],
  label = 'Join cues',
): Result<LabelledChange> => {
  const cues = cuesById(job, ids)
  if (!cues.ok) return cues
  if (cues.value.some((cue) => cue.first === 0))
    return fail(
      problem('conflict', 'The first cue of a reel has no cue before it to join; choose another.'),
    )
  return ok({ label, change: cueChange(cues.value, []) })
}
