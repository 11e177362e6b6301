import { canonicalJson, type Json } from '../base/canonicalJson.ts'
import type { Result } from '../base/result.ts'
import type { CueId } from '../job/recordIds.ts'
import type { Answer } from './answer.ts'

/**
 * What is signed of an answer, in the canonical form of RFC 8785: all it says, the cue, and the
 * checksum of the pictures, which stands for the look. Refuses half characters.
 */
export const answerText = (
  cue: CueId,
  { look: _, signature: __, ...said }: Answer,
): Result<string> => canonicalJson({ cue, ...said } as unknown as Json)
