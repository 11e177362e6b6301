import type { Answer } from '../../src/core/agreement/answer.ts'
import { cueLook, lookSum } from '../../src/core/agreement/cueLook.ts'
import type { Grade } from '../../src/core/colour/grade.ts'
import type { Cue } from '../../src/core/job/job.ts'
import { EBU_R103_V3 } from '../../src/core/tolerance/profile.ts'
import { sampleReel } from './sampleJob.ts'

/** When, and in whose name, things are said in tests. */
export const SAID = { by: 'Ines', at: '2026-11-27T10:00:00.000Z' } as const

/** What was said of a cue that stands alone on its reel; of another grade where one is given. */
export const answerOf = (cue: Cue, change: Partial<Answer> = {}, grade?: Grade): Answer => {
  const look = cueLook({ reel: sampleReel(), cues: [cue], profile: EBU_R103_V3 }, 0, grade)
  if (!look) throw new Error('no look')
  const plain = { says: 'agreed', note: '', marks: [], frame: null, alternate: null } as const
  return { ...plain, ...SAID, look, sha256: lookSum(look), pack: null, signature: null, ...change }
}
