import { ok, type Result } from '../../base/result.ts'
import { type Cdl, cdlToGrade, checkCdl } from '../../colour/cdl.ts'
import type { Grade } from '../../colour/grade.ts'
import { mapTriple, type Triple } from '../../colour/triple.ts'
import { checkGrade } from '../../job/checkGrade.ts'
import { LARGEST_NUMBER, SMALLEST_GAMMA } from '../../job/limits.ts'
import type { Sop } from './edlNumbers.ts'

const isWithin = (value: number, low: number, high: number): boolean =>
  value >= low && value <= high

const areWithin = (t: Triple, low: number, high: number): boolean =>
  isWithin(t[0], low, high) && isWithin(t[1], low, high) && isWithin(t[2], low, high)

/** Half the largest number: then a gain, which is slope and offset, is within it as well. */
const HALF = LARGEST_NUMBER / 2

/** Numbers that no check refuses, found at once: lists have many, and nearly all are such. */
const isPlain = ({ slope, offset, power, saturation }: Cdl): boolean =>
  areWithin(slope, 0, HALF) &&
  areWithin(offset, -HALF, HALF) &&
  areWithin(power, 2 * SMALLEST_GAMMA, HALF) &&
  isWithin(saturation, 0, HALF)

/** Past this, sums of numbers of six decimals differ from them by more than noise. */
const NOISE = 1e-12

/** A gain without the noise of adding slope and offset, which have six decimals as a rule. */
const tidyGain = (gain: number, lift: number): number => {
  const tidy = Math.round(gain * 1e6) / 1e6
  return Math.abs(tidy - gain) < NOISE && tidy >= lift ? tidy : gain
}

const edlCdlToGrade = (cdl: Cdl): Grade => {
  const grade = cdlToGrade(cdl)
  return { ...grade, gain: mapTriple(grade.gain, (gain, c) => tidyGain(gain, grade.lift[c])) }
}

/** The grade of ASC_SOP and ASC_SAT comments; what is not stated changes nothing. */
export const edlGrade = (sop: Sop | undefined, saturation = 1): Result<Grade> => {
  const { slope, offset, power } = sop ?? { slope: ONES, offset: ZEROS, power: ONES }
  const cdl: Cdl = { slope, offset, power, saturation }
  const grade = edlCdlToGrade(cdl)
  if (isPlain(cdl)) return ok(grade)
  const checked = checkCdl(cdl)
  return checked.ok ? checkGrade(grade) : checked
}

const ONES: Triple = [1, 1, 1]
const ZEROS: Triple = [0, 0, 0]

const group = (t: Triple): string => `(${t.join(' ')})`

/** The numbers of a grade that cannot be taken, as comments again. */
export const gradeComments = (
  sop: Sop | undefined,
  saturation: number | undefined,
): readonly string[] => [
  ...(sop ? [`ASC_SOP ${group(sop.slope)}${group(sop.offset)}${group(sop.power)}`] : []),
  ...(saturation === undefined ? [] : [`ASC_SAT ${saturation}`]),
]
