import type { PassId, ReelId } from '../job/recordIds.ts'
import type { Override } from './override.ts'
import type { TransferSettings } from './transferSettings.ts'

/** What is looked at in what was written. */
export type PassCheck =
  | 'frames'
  | 'cues'
  | 'tolerance'
  | 'limiting'
  | 'flashes'
  | 'tags'
  | 'duration'
  | 'sound'
  | 'checksum'

export const PASS_CHECKS: readonly PassCheck[] = [
  'frames',
  'cues',
  'tolerance',
  'limiting',
  'flashes',
  'tags',
  'duration',
  'sound',
  'checksum',
]

/** 'told' where there is nothing to be right or wrong, as sound that was left out and said so. */
export type FindingStanding = 'right' | 'wrong' | 'told' | 'not known'

/** What one look at the written files found, in a sentence with its numbers. */
export type PassFinding = {
  readonly check: PassCheck
  readonly standing: FindingStanding
  readonly says: string
}

/** What a pass wrote. */
export type PassOutput = {
  /** Name of the file or folder. */
  readonly name: string
  readonly files: number
  readonly frames: number
  readonly bytes: number
  /** Of the file; of a sequence, of the list of its files' checksums (`filesChecksum`). */
  readonly sha256: string
}

/** A transfer that was made, with what was found when it was read back. */
export type PassRecord = {
  readonly id: PassId
  readonly reel: ReelId
  /** UTC by ISO 8601, by the clock of the machine that made it. */
  readonly begunAt: string
  readonly endedAt: string
  /** Program and codecs in words. */
  readonly madeWith: string
  readonly settings: TransferSettings
  readonly output: PassOutput
  /** SHA-256 of `decidedText`: of all that decided the pictures. */
  readonly decided: string
  /** Checksum of the scan it was made from; null where it was not taken. */
  readonly scan: string | null
  readonly overrides: readonly Override[]
  readonly findings: readonly PassFinding[]
  /** Frames of the reel that could not be decoded and show the one before. */
  readonly heldFrames: readonly number[]
}

/** What all findings come to: the worst of them; what is only told is right. */
export const passStanding = (
  findings: readonly PassFinding[],
): Exclude<FindingStanding, 'told'> => {
  const has = (standing: FindingStanding) => findings.some((each) => each.standing === standing)
  if (has('wrong')) return 'wrong'
  return has('not known') ? 'not known' : 'right'
}
