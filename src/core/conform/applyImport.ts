import { problem } from '../base/problem.ts'
import { fail, ok, type Result } from '../base/result.ts'
import { MOST_CUES } from '../formats/job/jobSchema.ts'
import { cueChange } from '../job/change.ts'
import { cuesOfReel } from '../job/cueList.ts'
import type { LabelledChange } from '../job/history.ts'
import type { Cue, Job } from '../job/job.ts'
import type { CueId, ReelId } from '../job/recordIds.ts'
import { cueForDecision, cueWithDecision, joinForeign } from './cueWithDecision.ts'
import type { ImportPlan } from './importPlan.ts'

/**
 * One change that does what a plan says. A cue that begins for a decision has the values of the
 * cue whose frames it takes, then the decision's. Grades, framing, scenes and notes are taken with
 * `takesGrades`, ramps and shot changes with `takesPlaces`; what the job has no field for is kept beside. Refuses a
 * plan made of another state of the job.
 */
export const applyImport = (
  job: Job,
  reelId: ReelId,
  plan: ImportPlan,
  newId: () => CueId,
): Result<LabelledChange> => {
  const reel = job.reels[reelId]
  if (!reel) return fail(problem('not-found', 'This reel is no longer in the job.'))
  const taken = plan.rows.filter(
    ({ outcome }) => outcome === 'matches' || outcome === 'moves' || outcome === 'begins',
  )
  const existing = cuesOfReel(job, reelId)
  if (taken.some(({ cue }) => cue !== undefined && job.cues[cue.id] !== cue))
    return fail(
      problem('conflict', 'The job was changed since the list was looked at; look again.'),
    )
  const edited: Cue[] = []
  const made: Cue[] = []
  for (const row of taken) {
    const { cue, first } = row
    if (cue) edited.push(cueWithDecision(cue, row, plan))
    else if (first !== undefined)
      made.push(cueWithDecision(cueForDecision(existing, reelId, first, newId()), row, plan))
  }
  if (Object.keys(job.cues).length + made.length > MOST_CUES)
    return fail(
      problem('too-large', `A job holds at most ${MOST_CUES} cues; import fewer at a time.`),
    )
  const byId = new Map(edited.map((cue) => [cue.id, cue]))
  const firsts = [...existing.map((cue) => byId.get(cue.id) ?? cue), ...made].map(
    ({ first }) => first,
  )
  if (new Set(firsts).size < firsts.length || byId.size < edited.length)
    return fail(problem('conflict', 'Two cues would begin on one frame; look at the list again.'))
  const { cues } = cueChange(
    edited.flatMap(({ id }) => job.cues[id] ?? []),
    [...edited, ...made],
  )
  const foreign = taken.length > 0 ? joinForeign(reel.foreign, plan.foreign) : reel.foreign
  return ok({
    label: 'Import list',
    change: {
      ...(cues && { cues }),
      ...(foreign === reel.foreign
        ? {}
        : {
            reels: { added: {}, updated: { [reelId]: [reel, { ...reel, foreign }] }, removed: {} },
          }),
    },
  })
}
