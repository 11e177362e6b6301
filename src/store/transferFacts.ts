import { type ChecklistItem, checklist, standsInTheWay } from '../core/transfer/checklist.ts'
import { mostBytes } from '../core/transfer/mostBytes.ts'
import { CHECKLIST_TITLES } from '../core/transfer/override.ts'
import { type PassPlan, passPlan } from '../core/transfer/passPlan.ts'
import type { PassRecord } from '../core/transfer/passRecord.ts'
import { CHANGED, DOUBTFUL, MEASURED, NOT_AGREED, OUTSIDE, UNLOOKED } from './cueBits.ts'
import { cuesOf, jobOf, profileOf, reelOf } from './queries.ts'
import { standingOf } from './standing.ts'
import type { AppState } from './state.ts'

/** The plan of a transfer of the reel on screen; undefined where it cannot be made as it is set. */
export const planOf = (state: AppState): PassPlan | undefined => {
  const job = jobOf(state)
  const reel = reelOf(state)
  const plan = job && reel && passPlan(job, reel.id)
  return plan?.ok ? plan.value : undefined
}

/** Why the reel on screen cannot be transferred as it is set, in a sentence. */
export const planHindrance = (state: AppState): string | undefined => {
  const job = jobOf(state)
  const reel = reelOf(state)
  const plan = job && reel && passPlan(job, reel.id)
  return plan && !plan.ok ? plan.problems[0].says : undefined
}

/** What stands before a transfer of the reel on screen, from what is known on this computer. */
export const checklistOf = (state: AppState): readonly ChecklistItem[] => {
  const job = jobOf(state)
  const reel = reelOf(state)
  if (!job || !reel) return []
  const cues = cuesOf(state)
  const { bits } = standingOf(state)
  const cuesWith = (wanted: number) =>
    cues.flatMap(({ id }, index) => ((bits[index] ?? 0) & wanted ? [id] : []))
  const changedSince = cuesWith(CHANGED)
  const plan = planOf(state)
  return checklist({
    cues: cues.length,
    unlooked: cuesWith(UNLOOKED),
    asksAgreement: job.info.job.asksAgreement,
    notAgreed: cues.flatMap(({ id }, index) =>
      ((bits[index] ?? 0) & (NOT_AGREED | CHANGED)) === NOT_AGREED ? [id] : [],
    ),
    changedSince,
    unmeasured: cues.flatMap(({ id }, index) => ((bits[index] ?? 0) & MEASURED ? [] : [id])),
    outside: cuesWith(OUTSIDE),
    tolerance: profileOf(job).name,
    doubtful: cuesWith(DOUBTFUL),
    recorded: reel.media.checksum,
    taken: state.transferring.taken,
    room: state.transferring.room,
    needed: plan ? mostBytes(plan) : 0,
    lineUps: reel.lineUps.length,
    overrides: reel.overrides,
  })
}

/** Why a pass cannot begin now, in a sentence; '' where it can. */
export const passWaitsFor = (state: AppState): string => {
  if (state.media !== 'ready') return 'The scan is not open.'
  const hindrance = planHindrance(state)
  if (hindrance !== undefined) return hindrance
  const missing = standsInTheWay(checklistOf(state)).map(({ check }) => CHECKLIST_TITLES[check])
  return missing.length === 0 ? '' : `The checklist waits for: ${missing.join(', ')}.`
}

/** Whether a pass can be begun: nothing stands in its way, and none is under way or unfinished. */
export const canBeginPass = (state: AppState): boolean => {
  const { run, unfinished } = state.transferring
  return run === undefined && unfinished === undefined && passWaitsFor(state) === ''
}

/** The passes of the reel on screen, the newest first. */
export const passesOf = (state: AppState): readonly PassRecord[] => {
  const job = jobOf(state)
  const { reelId } = state
  if (!job) return []
  return Object.values<PassRecord>(job.passes)
    .filter(({ reel }) => reel === reelId)
    .sort((a, b) => (a.endedAt < b.endedAt ? 1 : -1))
}
