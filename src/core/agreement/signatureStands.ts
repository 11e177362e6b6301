import type { Job } from '../job/job.ts'
import type { CueId } from '../job/recordIds.ts'
import type { Answer } from './answer.ts'
import { answerText } from './answerText.ts'
import { verifyText } from './signing.ts'

/**
 * What a signature says: that whoever gave the answer held the pack ('right'), that answer or
 * signature were changed ('wrong'), or nothing: there is none, or the key is not known here.
 */
export type SignatureStanding = 'right' | 'wrong' | 'not signed' | 'cannot be checked'

/** How the signature of an answer to a cue stands with the packs a job knows. */
export const signatureStands = async (
  job: Job,
  cue: CueId,
  answer: Answer,
): Promise<SignatureStanding> => {
  const { pack, signature } = answer
  const key = pack !== null && Object.hasOwn(job.packs, pack) ? job.packs[pack]?.key : null
  if (signature === null) return 'not signed'
  const text = answerText(cue, answer)
  if (!key || !text.ok) return 'cannot be checked'
  const isRight = await verifyText(key, text.value, signature)
  if (isRight === undefined) return 'cannot be checked'
  return isRight ? 'right' : 'wrong'
}
