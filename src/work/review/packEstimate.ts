import type { PackCue } from '../../core/agreement/pack/packContents.ts'
import type { Cue } from '../../core/job/job.ts'
import type { PackStill } from './packStills.ts'

/** Bytes of the page's own text, and about those of a cue besides its pictures. */
const PAGE_BYTES = 20_000
const CUE_BYTES = 2_000

/** Cues that a size is reckoned from. */
const SAMPLE = 5

/** Bytes in a character of base64. */
const BASE64 = 3 / 4

/** A few of the cues, evenly over all of them: a reel often begins with leader, which is small. */
export const packSample = <Each>(cues: readonly Each[]): readonly Each[] => {
  const count = Math.min(SAMPLE, cues.length)
  return Array.from(
    { length: count },
    (_, k) => cues[Math.floor(((k + 0.5) * cues.length) / count)] as Each,
  )
}

const mean = (lengths: readonly number[]): number =>
  lengths.reduce((sum, length) => sum + length, 0) / Math.max(1, lengths.length)

/**
 * How large a pack of these cues would be, in bytes, before it is made: from the pictures of some
 * of them, and their full-size stills where those go with it. Undefined where none could be read.
 */
export const packEstimate = (
  cues: readonly Pick<Cue, 'alternates'>[],
  sample: readonly PackCue[],
  stills: readonly PackStill[],
): number | undefined => {
  if (sample.length === 0) return undefined
  const picture = mean(
    sample.flatMap(({ before, after, alternates }) => [
      before.length,
      after.length,
      ...alternates.map((each) => each.picture.length),
    ]),
  )
  const clip = mean(sample.map((each) => each.clip?.length ?? 0))
  const still = mean(stills.map(({ address }) => address.length * BASE64))
  const bytes = cues.reduce(
    (sum, { alternates }) => sum + CUE_BYTES + clip + picture * (2 + alternates.length) + 2 * still,
    PAGE_BYTES,
  )
  return Math.round(bytes)
}
