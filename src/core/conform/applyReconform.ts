import { problem } from '../base/problem.ts'
import { fail, ok, type Result } from '../base/result.ts'
import { type Change, cueChange, type TableChange } from '../job/change.ts'
import { cuesOfReel } from '../job/cueList.ts'
import type { LabelledChange } from '../job/history.ts'
import type { Cue, HeldFrame, Job, Reel } from '../job/job.ts'
import { newCue } from '../job/newCue.ts'
import type { CueId, ReelId } from '../job/recordIds.ts'
import type { Frame } from '../time/frame.ts'
import type { ReconformPlan, ReconformRow } from './reconformPlan.ts'

/** What the new scan or cut of a reel is. */
export type NewReelFacts = Pick<Reel, 'frames' | 'media' | 'rate'> &
  Partial<Pick<Reel, 'startCount' | 'isDropFrame'>>

/** A cue where its picture is now. One that begins a reel begins it as a start, no other does. */
const followed = ({ cue, first, sure }: ReconformRow): Cue | undefined => {
  if (first === undefined) return undefined
  const isStart = cue.boundary.kind === 'start'
  const boundary =
    isStart === (first === 0)
      ? cue.boundary
      : first === 0
        ? ({ kind: 'start', confidence: 1 } as const)
        : ({ kind: 'cut', confidence: sure } as const)
  return first === cue.first && boundary === cue.boundary ? cue : { ...cue, first, boundary }
}

const heldChange = (plan: ReconformPlan): TableChange<HeldFrame> => {
  const updated: Record<string, readonly [HeldFrame, HeldFrame]> = {}
  const removed: Record<string, HeldFrame> = {}
  for (const { held, frame } of plan.held)
    if (frame === undefined) removed[held.id] = held
    else if (frame !== held.frame) updated[held.id] = [held, { ...held, frame }]
  return { added: {}, updated, removed }
}

/**
 * One change that gives a reel its new scan or cut and lets its cues follow. Cues keep all their
 * values; a lost one leaves the reel, where the report of the plan keeps its numbers and undo
 * brings it back. Where a cue's picture comes again a cue with its values begins; where a new
 * picture comes, one that changes nothing. Refuses a plan of another state of the job.
 */
export const applyReconform = (
  job: Job,
  reelId: ReelId,
  plan: ReconformPlan,
  facts: NewReelFacts,
  newId: () => CueId,
): Result<LabelledChange> => {
  const reel = job.reels[reelId]
  if (!reel) return fail(problem('not-found', 'This reel is no longer in the job.'))
  const cues = cuesOfReel(job, reelId)
  const isOfThisJob =
    plan.reel.id === reelId &&
    plan.rows.length === cues.length &&
    plan.rows.every(({ cue }, index) => cue === cues[index]) &&
    plan.held.every(({ held }) => job.held[held.id] === held)
  if (!isOfThisJob)
    return fail(
      problem('conflict', 'The job was changed since its pictures were looked for; look again.'),
    )
  if (facts.frames !== plan.frames)
    return fail(
      problem(
        'conflict',
        `The pictures of a reel of ${plan.frames} frames were looked for; this one has ${facts.frames}.`,
      ),
    )
  const kept = plan.rows.flatMap((row) => followed(row) ?? [])
  const added = plan.added.map(({ first, again, ramp, boundary }): Cue => {
    const made = newCue(newId(), reelId, first, boundary, ramp)
    if (!again) return made
    const { id, answers, note } = made
    return { ...again, id, first, ramp, boundary, answers, note }
  })
  const firsts = new Set<Frame>([...kept, ...added].map(({ first }) => first))
  if (firsts.size < kept.length + added.length || !firsts.has(0 as Frame))
    return fail(
      problem('conflict', 'Two cues would begin on one frame; look for the pictures again.'),
    )
  const { startCount = reel.startCount, isDropFrame = reel.isDropFrame, ...rest } = facts
  const after: Reel = { ...reel, ...rest, startCount, isDropFrame }
  const change: Change = {
    ...cueChange(cues, [...kept, ...added]),
    reels: { added: {}, updated: { [reelId]: [reel, after] }, removed: {} },
    held: heldChange(plan),
  }
  return ok({ label: plan.follows === 'list' ? 'Follow list' : 'Follow pictures', change })
}
