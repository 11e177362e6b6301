import { ok, type Result } from '../../core/base/result.ts'
import { sha256OfText } from '../../core/base/sha256.ts'
import type { ReelId } from '../../core/job/recordIds.ts'
import { decidedText } from '../../core/transfer/decidedText.ts'
import { partIdentityText } from '../../core/transfer/partIdentity.ts'
import type { PassPlan } from '../../core/transfer/passPlan.ts'

const KEY_LETTERS = 24

/** What the unfinished pass of a reel is kept by in the browser's storage: letters and digits. */
export const passKey = (reel: ReelId): string => sha256OfText(reel).slice(0, KEY_LETTERS)

/** What a pass is known by. */
export type PassIdentity = {
  /** SHA-256 of all that decides its pictures. */
  readonly decided: string
  /** SHA-256 of that with the scan. */
  readonly identity: string
  /** The same as it was before the job had a checksum of the scan. */
  readonly identityBefore: string
}

const withoutChecksum = (plan: PassPlan): PassPlan => ({
  ...plan,
  reel: { ...plan.reel, media: { ...plan.reel.media, checksum: null } },
})

/** What the pass of a plan is known by; refuses numbers that are not finite. */
export const passIdentity = (plan: PassPlan): Result<PassIdentity> => {
  const text = decidedText(plan)
  if (!text.ok) return text
  const decided = sha256OfText(text.value)
  const identity = partIdentityText(plan, decided)
  const before = partIdentityText(withoutChecksum(plan), decided)
  if (!identity.ok) return identity
  if (!before.ok) return before
  return ok({
    decided,
    identity: sha256OfText(identity.value),
    identityBefore: sha256OfText(before.value),
  })
}
