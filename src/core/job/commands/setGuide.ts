import { problem } from '../../base/problem.ts'
import { fail, type Result } from '../../base/result.ts'
import type { GuideTrack } from '../../film/guideTrack.ts'
import { framesPerSecond } from '../../time/rate.ts'
import type { LabelledChange } from '../history.ts'
import type { Job } from '../job.ts'
import { LARGEST_SPEED, NAME_LIMIT } from '../limits.ts'
import type { ReelId } from '../recordIds.ts'
import { setReel } from './setReel.ts'

/** Says which sound runs with a reel and where it lies, or that none does. */
export const setGuide = (
  job: Job,
  id: ReelId,
  guide: GuideTrack | null,
  label = guide ? 'Guide track' : 'Take the guide track out',
): Result<LabelledChange> => {
  const frames = job.reels[id]?.frames ?? 0
  if (guide) {
    const field = (name: string) => ({ field: `guide.${name}` })
    const { name, madeFor, mark } = guide
    if (name === '' || name.length > NAME_LIMIT)
      return fail(problem('missing', 'A guide track has the name of its file.', field('name')))
    const speed = framesPerSecond(madeFor)
    if (!(speed >= 1 && speed <= LARGEST_SPEED))
      return fail(
        problem(
          'out-of-range',
          `Film runs at 1 to ${LARGEST_SPEED} frames a second.`,
          field('madeFor'),
        ),
      )
    if (!(mark.frame >= 0 && mark.frame < frames && Number.isInteger(mark.frame)))
      return fail(
        problem(
          'out-of-range',
          `The sync mark is on a frame of the reel, 0 to ${frames - 1}.`,
          field('mark.frame'),
        ),
      )
    if (!Number.isFinite(mark.seconds))
      return fail(
        problem('malformed', 'Say at how many seconds the sound has its mark.', field('mark')),
      )
  }
  return setReel(job, id, (reel) => ({ ...reel, guide }), label)
}
