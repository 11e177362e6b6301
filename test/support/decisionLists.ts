import type { Decision, DecisionList } from '../../src/core/formats/decisionList.ts'
import { correctionId } from '../../src/core/formats/listNames.ts'
import { cueEnd, cuesOfReel } from '../../src/core/job/cueList.ts'
import type { Job } from '../../src/core/job/job.ts'
import type { ReelId } from '../../src/core/job/recordIds.ts'

/** A decision that states nothing but what is given. */
export const decision = (change: Partial<Decision> = {}): Decision => ({
  name: '',
  source: '',
  sourceSpan: undefined,
  recordSpan: undefined,
  transition: { kind: 'cut', frames: 0 },
  values: {},
  line: undefined,
  foreign: [],
  ...change,
})

export const list = (
  decisions: readonly Decision[],
  change: Partial<DecisionList> = {},
): DecisionList => ({
  format: 'edl',
  title: '',
  rate: undefined,
  decisions,
  foreign: [],
  notTaken: [],
  ...change,
})

/** The list a job's own cues amount to, with all that a list can carry. */
export const ownList = (job: Job, reelId: ReelId): DecisionList => {
  const reel = job.reels[reelId]
  if (!reel) throw new Error('no such reel')
  const cues = cuesOfReel(job, reelId)
  const decisions = cues.map((cue, index) => {
    const { ramp, rampShape, boundary, grade, gradeName, alternates, framing, scene, note } = cue
    const from = reel.startCount + cue.first
    const span = { from, to: reel.startCount + cueEnd(cues, index, reel.frames) }
    return decision({
      name: correctionId(reel, index + 1),
      source: reel.name,
      sourceSpan: span,
      recordSpan: span,
      values: { ramp, rampShape, boundary, grade, gradeName, alternates, framing, scene, note },
    })
  })
  return list(decisions, { format: 'otio', rate: reel.rate })
}
