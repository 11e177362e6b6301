import { problem } from '../../base/problem.ts'
import { fail, ok, type Result } from '../../base/result.ts'
import type { Frame } from '../../time/frame.ts'
import { formatTimecode } from '../../time/timecode.ts'
import { cueAt, cueNumber, cuesOfReel } from '../cueList.ts'
import type { LabelledChange } from '../history.ts'
import type { Job } from '../job.ts'
import { MOST_HELD } from '../limits.ts'
import type { HeldId, ReelId } from '../recordIds.ts'
import { valuesAt } from '../valuesAt.ts'

/**
 * Keeps a frame as a reference under the id `id`: the reel and the frame, the grade and framing in
 * force on it, and a name made of its cue's number and its timecode. Refuses a frame outside the
 * reel and one more than a job holds.
 */
export const holdFrame = (
  job: Job,
  reelId: ReelId,
  frame: Frame,
  id: HeldId,
): Result<LabelledChange> => {
  const reel = job.reels[reelId]
  const cue = cueAt(job, reelId, frame)
  if (!reel || !cue)
    return fail(problem('not-found', `Frame ${frame} is not in the reel; hold one that is.`))
  if (Object.keys(job.held).length >= MOST_HELD)
    return fail(
      problem('too-large', `A job holds at most ${MOST_HELD} frames; drop one first.`, {
        field: 'held',
      }),
    )
  const cues = cuesOfReel(job, reelId)
  const number = cueNumber(cues, cue)
  const { grade, framing } = valuesAt(cue, cues[number - 2], frame)
  const timecode = formatTimecode(reel.startCount + frame, reel.rate, reel.isDropFrame)
  const held = { id, reel: reelId, frame, name: `cue ${number}, ${timecode}`, grade, framing }
  return ok({
    label: 'Hold frame',
    change: { held: { added: { [id]: held }, updated: {}, removed: {} } },
  })
}
