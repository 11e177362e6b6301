import { problem } from '../../base/problem.ts'
import { fail, ok, type Result } from '../../base/result.ts'
import { checkProcessList } from '../../process/checkProcessList.ts'
import type { LabelledChange } from '../history.ts'
import type { Job, Reel } from '../job.ts'
import { LARGEST_DENSITY, NAME_LIMIT, SMALLEST_FILM_GAMMA } from '../limits.ts'
import type { ReelId } from '../recordIds.ts'

/** Changes a reel's particulars (name, gauge, rate, timecode start, coding, base); the same reel is no change. */
export const setReel = (
  job: Job,
  id: ReelId,
  edit: (reel: Reel) => Reel,
  label = 'Reel particulars',
): Result<LabelledChange> => {
  const reel = job.reels[id]
  if (!reel) return fail(problem('not-found', 'This reel is no longer in the job.'))
  const edited = edit(reel)
  if (edited === reel) return ok({ label, change: {} })
  if (edited.name.trim() === '')
    return fail(problem('missing', 'A reel needs a name; type one.', { field: 'name' }))
  if (edited.name.length > NAME_LIMIT)
    return fail(
      problem('too-large', `A reel's name holds at most ${NAME_LIMIT} characters; shorten it.`, {
        field: 'name',
      }),
    )
  const dense = [...edited.base.clear, ...edited.base.dyes.flat(), ...edited.base.gamma]
  if (
    !dense.every((value) => Math.abs(value) <= LARGEST_DENSITY) ||
    !edited.base.gamma.every((gamma) => gamma >= SMALLEST_FILM_GAMMA)
  )
    return fail(
      problem(
        'out-of-range',
        `A density or dye number is past ±${LARGEST_DENSITY}, or a film gamma below ${SMALLEST_FILM_GAMMA}; give one within.`,
        { field: 'base' },
      ),
    )
  const [listProblem] = edited.base.list ? checkProcessList(edited.base.list) : []
  if (listProblem) return fail(listProblem)
  return ok({
    label,
    change: { reels: { added: {}, updated: { [id]: [reel, edited] }, removed: {} } },
  })
}
