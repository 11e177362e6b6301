import { problem } from '../../base/problem.ts'
import { fail, type Result } from '../../base/result.ts'
import type { LabelledChange } from '../history.ts'
import type { Job } from '../job.ts'
import { SCENE_LIMIT } from '../limits.ts'
import type { CueId } from '../recordIds.ts'
import { editCues } from './cueCommand.ts'

/**
 * Marks cues as of one scene: a word or number of at most 100 characters, without the spaces round
 * it; '' takes the mark away.
 */
export const setScene = (
  job: Job,
  ids: readonly CueId[],
  scene: string,
): Result<LabelledChange> => {
  const mark = scene.trim()
  if (mark.length > SCENE_LIMIT)
    return fail(
      problem('too-large', `A scene mark holds at most ${SCENE_LIMIT} characters; shorten it.`, {
        field: 'scene',
      }),
    )
  return editCues(job, ids, 'Scene mark', (cue) =>
    cue.scene === mark ? cue : { ...cue, scene: mark },
  )
}
