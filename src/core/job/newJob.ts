import { frame } from '../time/frame.ts'
import { EBU_R103_V3 } from '../tolerance/profile.ts'
import type { Job, Reel } from './job.ts'
import { newCue } from './newCue.ts'
import type { CueId } from './recordIds.ts'

/** A job of one reel with one cue over all of it, held to EBU R 103 v3. */
export const newJob = (title: string, reel: Reel, cueId: CueId): Job => ({
  info: {
    job: { id: 'job', title, tolerance: EBU_R103_V3.id, profiles: [], asksAgreement: false },
  },
  reels: { [reel.id]: reel },
  cues: { [cueId]: newCue(cueId, reel.id, frame(0), { kind: 'start', confidence: 1 }) },
  held: {},
  passes: {},
  packs: {},
})
