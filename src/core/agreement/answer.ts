import type { PackId } from '../job/recordIds.ts'
import type { CueLook } from './cueLook.ts'

/** What was said of a cue. 'open' takes back what was said before. */
export type AnswerSays = 'agreed' | 'asked' | 'open'

/** A place on the delivered picture: parts of its width and height, 0…1, from the top left. */
export type MarkPoint = readonly [across: number, down: number]

/** A line drawn on the picture by hand. */
export type Mark = readonly MarkPoint[]

/** What one person said of one cue, and of which pictures. Nothing of it is changed later. */
export type Answer = {
  readonly says: AnswerSays
  /** The name as they gave it; '' where it was said at the job itself without a name. */
  readonly by: string
  /** UTC by ISO 8601, by the clock of whoever said it; null where an earlier version kept no time. */
  readonly at: string | null
  readonly note: string
  /** Lines drawn on the picture, and the frame of the reel they were drawn on. */
  readonly marks: readonly Mark[]
  readonly frame: number | null
  /** The alternate that is preferred, by its name: `look` then has its grade. */
  readonly alternate: string | null
  /** All that decided the pictures that it was said of, and its checksum (`lookSum`). */
  readonly look: CueLook
  readonly sha256: string
  /** The review pack it came by; null where it was said at the job itself. */
  readonly pack: PackId | null
  /** Over `answerText`, by the pack's key, in hexadecimal digits; null where it is not signed. */
  readonly signature: string | null
}

/** How what is signed is signed: EdDSA of RFC 8032, or ECDSA on P-256 with SHA-256 (FIPS 186-5). */
export type SigningAlgorithm = 'Ed25519' | 'P-256'

/** A review pack that was made of a job. */
export type PackRecord = {
  readonly id: PackId
  /** UTC by ISO 8601. */
  readonly madeAt: string
  /** Whom it was made for, in words; '' where nobody was named. */
  readonly madeFor: string
  readonly cues: number
  /** What its answers are signed with, and the key to check it, raw, in hexadecimal. Null: unsigned. */
  readonly key: { readonly algorithm: SigningAlgorithm; readonly publicKey: string } | null
}
