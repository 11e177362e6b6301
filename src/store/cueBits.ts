import type { Agreement } from '../core/agreement/agreementOf.ts'
import { isDoubtful } from '../core/job/isDoubtful.ts'
import type { Cue } from '../core/job/job.ts'
import type { AppState } from './state.ts'

/** What holds for a cue, each a bit, so that a long list is sifted in no time. */
export const MEASURED = 1
export const OUTSIDE = 2
export const DOUBTFUL = 4
export const UNLOOKED = 8
export const NOT_AGREED = 16
export const ASKED = 32
export const CHANGED = 64

/** What a person has to come back to. */
export const NEEDING = OUTSIDE | DOUBTFUL | UNLOOKED | ASKED | CHANGED

/** The bits that a cue, its agreement and the record of what was looked at tell. */
export const ownBits = (cue: Cue, agreement: Agreement, looked: AppState['looked']): number =>
  (isDoubtful(cue) ? DOUBTFUL : 0) |
  (looked.has(cue.id) ? 0 : UNLOOKED) |
  (agreement === 'agreed' ? 0 : NOT_AGREED) |
  (agreement === 'asked' ? ASKED : 0) |
  (agreement === 'changed' ? CHANGED : 0)

/** How a cue of these bits stands with who agrees to it. */
export const agreementOfBits = (bits: number): Agreement => {
  if (bits & CHANGED) return 'changed'
  if (bits & ASKED) return 'asked'
  return bits & NOT_AGREED ? 'open' : 'agreed'
}
