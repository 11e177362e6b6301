import { gradeToCdl } from '../colour/cdl.ts'
import { type Grade, sameGrade } from '../colour/grade.ts'
import type { ReadFormat } from '../formats/decisionList.ts'
import { edlLinesOf } from '../formats/edl/edlText.ts'

/** Event lines carry six decimals. */
const EDL_ROUNDING = 0.500_001e-6

/** What is lost on the way from gain and gamma to slope and power and back. */
const CDL_ROUNDING = 1e-12

const numbersOf = (grade: Grade): readonly number[] => {
  const { slope, offset, power, saturation } = gradeToCdl(grade)
  return [...slope, ...offset, ...power, saturation]
}

/**
 * The same of a note: event lines are plain ASCII, and a note that was written so does not replace
 * the one it was made from.
 */
export const isNoteWrittenAs = (note: string, own: string, format: ReadFormat): boolean =>
  note === own || (format === 'edl' && note === edlLinesOf(own))

/**
 * Whether a list of this format says `grade` where the grade meant is `own`, as far as its decimals
 * go: the numbers of a list that was written from a job do not replace the job's more exact ones.
 */
export const isWrittenAs = (grade: Grade, own: Grade, format: ReadFormat): boolean => {
  if (sameGrade(grade, own)) return true
  const numbers = numbersOf(own)
  return numbersOf(grade).every((value, place) => {
    const exact = numbers[place] as number
    const rounding = CDL_ROUNDING * Math.max(1, Math.abs(exact))
    return Math.abs(value - exact) <= (format === 'edl' ? EDL_ROUNDING : 0) + rounding
  })
}
