import { ok, type Result } from '../../core/base/result.ts'
import type { ReelId } from '../../core/job/recordIds.ts'
import { decidedText } from '../../core/transfer/decidedText.ts'
import { partIdentityText } from '../../core/transfer/partIdentity.ts'
import type { PassPlan } from '../../core/transfer/passPlan.ts'
import { sha256OfText } from '../../media/sha256.ts'

const KEY_LETTERS = 24

/** What the unfinished pass of a reel is kept by in the browser's storage: letters and digits. */
export const passKey = (reel: ReelId): string => sha256OfText(reel).slice(0, KEY_LETTERS)

/** SHA-256 of all that decides a pass's pictures, and of that with the scan. */
export const passIdentity = (
  plan: PassPlan,
): Result<{ readonly decided: string; readonly identity: string }> => {
  const text = decidedText(plan)
  if (!text.ok) return text
  const decided = sha256OfText(text.value)
  const identity = partIdentityText(plan, decided)
  return identity.ok ? ok({ decided, identity: sha256OfText(identity.value) }) : identity
}
