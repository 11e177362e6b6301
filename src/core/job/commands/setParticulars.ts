import { fail, type Result } from '../../base/result.ts'
import { checkParticulars } from '../../film/checkParticulars.ts'
import type { Particulars } from '../../film/particulars.ts'
import type { LabelledChange } from '../history.ts'
import type { Job } from '../job.ts'
import type { ReelId } from '../recordIds.ts'
import { setReel } from './setReel.ts'

/** Says what was found in the can; refused where it cannot be. */
export const setParticulars = (
  job: Job,
  id: ReelId,
  edit: (before: Particulars) => Particulars,
  label: string,
): Result<LabelledChange> => {
  const reel = job.reels[id]
  const particulars = reel && edit(reel.particulars)
  const [first, ...rest] = particulars ? checkParticulars(particulars, reel.frames) : []
  if (first) return fail(first, ...rest)
  return setReel(job, id, (before) => ({ ...before, particulars: edit(before.particulars) }), label)
}
