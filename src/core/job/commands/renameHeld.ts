import { problem } from '../../base/problem.ts'
import { fail, ok, type Result } from '../../base/result.ts'
import type { LabelledChange } from '../history.ts'
import type { Job } from '../job.ts'
import { NAME_LIMIT } from '../limits.ts'
import type { HeldId } from '../recordIds.ts'

/** Gives a held frame another name, without the spaces round it; it may not be empty. */
export const renameHeld = (job: Job, id: HeldId, name: string): Result<LabelledChange> => {
  const label = 'Rename held frame'
  const held = job.held[id]
  if (!held) return fail(problem('not-found', 'This held frame is no longer in the job.'))
  const trimmed = name.trim()
  if (trimmed === '')
    return fail(problem('missing', 'A held frame needs a name; type one.', { field: 'name' }))
  if (trimmed.length > NAME_LIMIT)
    return fail(
      problem(
        'too-large',
        `A held frame's name holds at most ${NAME_LIMIT} characters; shorten it.`,
        { field: 'name' },
      ),
    )
  if (trimmed === held.name) return ok({ label, change: {} })
  const renamed = { ...held, name: trimmed }
  return ok({
    label,
    change: { held: { added: {}, updated: { [id]: [held, renamed] }, removed: {} } },
  })
}
