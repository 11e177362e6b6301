import type { Answer } from '../../src/core/agreement/answer.ts'
import type { AnswerFile } from '../../src/core/agreement/answerFile.ts'
import { cueLook, lookSum } from '../../src/core/agreement/cueLook.ts'
import { cueIndexAt, cuesOfReel } from '../../src/core/job/cueList.ts'
import type { Job } from '../../src/core/job/job.ts'
import type { CueId, PackId } from '../../src/core/job/recordIds.ts'
import { toleranceOf } from '../../src/core/tolerance/findProfile.ts'
import { REEL_ID } from './sampleJob.ts'

export const PACK_ID = 'pack-1' as PackId

/** An answer to a cue of a job as it is, as a review pack gives it. */
export const packAnswer = (job: Job, id: CueId, change: Partial<Answer> = {}): Answer => {
  const cue = job.cues[id]
  const reel = job.reels[REEL_ID]
  if (!cue || !reel) throw new Error('no such cue')
  const cues = cuesOfReel(job, REEL_ID)
  const kept = cue.alternates.find(({ name }) => name === change.alternate)
  const ground = { reel, cues, profile: toleranceOf(job.info.job) }
  const look = cueLook(ground, cueIndexAt(cues, cue.first), kept?.grade)
  if (!look) throw new Error('no look')
  const plain = { says: 'agreed', note: '', marks: [], frame: null, alternate: null } as const
  const by = { by: 'Ines', at: '2026-11-27T10:00:00.000Z', pack: PACK_ID, signature: null }
  return { ...plain, ...by, look, sha256: lookSum(look), ...change }
}

/** What a pack of the sample reel sends back. */
export const answerFile = (
  answers: readonly { readonly cue: CueId; readonly answer: Answer }[],
  change: Partial<AnswerFile> = {},
): AnswerFile => ({
  format: 'reelwright-answer',
  version: 1,
  pack: PACK_ID,
  title: 'Orlop',
  reel: { id: REEL_ID, name: 'Orlop 1' },
  answers,
  ...change,
})
