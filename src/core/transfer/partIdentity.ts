import { canonicalJson } from '../base/canonicalJson.ts'
import type { Result } from '../base/result.ts'
import type { PassPlan } from './passPlan.ts'

/** Raised when frames are made or laid out otherwise than before: older parts then do not join. */
const MAKING = 2

/**
 * What the identity of a part is the SHA-256 of, in canonical form: all that decided its pictures
 * (`decidedText`), the scan as far as the job knows it, and the way frames are made.
 */
export const partIdentityText = ({ reel }: PassPlan, decided: string): Result<string> =>
  canonicalJson({
    making: MAKING,
    decided,
    scan: { name: reel.media.name, bytes: reel.media.bytes, checksum: reel.media.checksum },
  })
