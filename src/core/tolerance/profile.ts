import { type Problem, problem } from '../base/problem.ts'

/** A broadcast tolerance: what the delivered signal may do. Levels are signal (0 black, 1 peak). */
export type ToleranceProfile = {
  readonly id: string
  readonly name: string
  readonly source: string
  /** Lowest and highest level of R′, G′ and B′. */
  readonly rgb: readonly [low: number, high: number]
  /** Lowest and highest level of Y′. */
  readonly luma: readonly [low: number, high: number]
  /** Part of the delivered picture's area that may lie outside, 0…1. */
  readonly area: number
  /** Whether levels are taken after the spatial filter of EBU R 103 v3. */
  readonly filtered: boolean
}

/** A 10-bit narrow-range code as a signal level. */
const code10 = (code: number): number => (code - 64) / 876

/**
 * The limits themselves are inside: a thousandth of a code is added to each, so that a level which
 * is exactly on one is not put past it by the rounding of a sum of floats.
 */
const PREFERRED = [code10(20 - 0.001), code10(984 + 0.001)] as const

/**
 * EBU R 103 v3.0 (May 2020): R′, G′, B′ and Y′ within the preferred range 20…984 of 10-bit codes
 * (the table, ±5 %), after the low-pass filter of "Video Signal Filtering", with excursions on up
 * to 1 % of the picture tolerated.
 */
export const EBU_R103_V3: ToleranceProfile = {
  id: 'ebu-r103-v3',
  name: 'EBU R 103 v3',
  source:
    'EBU R 103 v3.0 (May 2020), preferred range by table, video signal filtering, 1 % of area',
  rgb: PREFERRED,
  luma: PREFERRED,
  area: 0.01,
  filtered: true,
}

export const TOLERANCE_PROFILES: readonly ToleranceProfile[] = [EBU_R103_V3]

export const toleranceProfile = (id: string): ToleranceProfile | undefined =>
  TOLERANCE_PROFILES.find((profile) => profile.id === id)

/** A tolerance this program does not know; a job is never measured by another in its place. */
export const unknownTolerance = (id: string): Problem =>
  problem(
    'not-found',
    `The tolerance “${id}” is not known here; name one of ${TOLERANCE_PROFILES.map((each) => each.id).join(', ')}.`,
    { field: 'info.tolerance' },
  )

const plain = (text: string): string => text.toLowerCase().replace(/[^a-z0-9]/gu, '')

/** A tolerance by its id or its name, however it is spaced: `EBU R103 v3` is `ebu-r103-v3`. */
export const toleranceByName = (text: string): ToleranceProfile | undefined =>
  TOLERANCE_PROFILES.find(({ id, name }) => [id, name].some((each) => plain(each) === plain(text)))
