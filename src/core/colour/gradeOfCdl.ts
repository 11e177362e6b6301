import { type Cdl, cdlToGrade } from './cdl.ts'
import type { Grade } from './grade.ts'
import { mapTriple } from './triple.ts'

/** Digits that numbers are tried with, the shortest first. */
const DIGITS = [6, 9, 12, 15] as const

/** The value, if need be rounded or moved by its last bit, for which something holds. */
const roundest = (value: number, holds: (candidate: number) => boolean): number => {
  const step = Math.abs(value) * Number.EPSILON
  const candidates = [
    ...DIGITS.map((digits) => Number(value.toPrecision(digits))),
    value,
    ...[value - step, value + step, value - 2 * step, value + 2 * step],
  ]
  return candidates.find(holds) ?? value
}

/**
 * The grade of a correction, as `cdlToGrade` has it but for the last bits: the one of the fewest
 * digits that `gradeToCdl` makes just this correction of. So a grade that a person set comes back
 * from a file to the last bit, which adding and dividing alone would not do.
 */
export const gradeOfCdl = (cdl: Cdl): Grade => {
  const { lift, gamma, gain, saturation } = cdlToGrade(cdl)
  return {
    lift,
    gamma: mapTriple(gamma, (value, c) => roundest(value, (each) => 1 / each === cdl.power[c])),
    gain: mapTriple(gain, (value, c) => roundest(value, (each) => each - lift[c] === cdl.slope[c])),
    saturation,
  }
}
