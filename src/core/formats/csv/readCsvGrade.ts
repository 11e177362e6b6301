import { type Problem, problem } from '../../base/problem.ts'
import { type Cdl, cdlToGrade, checkCdl, gradeToCdl } from '../../colour/cdl.ts'
import type { Grade } from '../../colour/grade.ts'
import type { Triple } from '../../colour/triple.ts'
import { checkGrade } from '../../job/checkGrade.ts'
import type { CsvCells } from './csvCells.ts'
import { CDL_COLUMNS, type CsvColumn, columnNamed, GRADE_COLUMNS } from './csvColumns.ts'

/** Closer than this, slope, offset and power say what lift, gamma and gain do. */
const SAME = 1e-9

const isAlike = (a: number, b: number): boolean =>
  Math.abs(a - b) <= SAME * Math.max(1, Math.abs(a), Math.abs(b))

const triples = (numbers: readonly number[]): readonly [Triple, Triple, Triple] => {
  const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0, g = 0, h = 0, i = 0] = numbers
  return [
    [a, b, c],
    [d, e, f],
    [g, h, i],
  ]
}

const numbersOf = ({ slope, offset, power }: Cdl): readonly number[] => [
  ...slope,
  ...offset,
  ...power,
]

/** Refuses, by line and column, what a check found wrong with the numbers of a row. */
const refuseAll = (
  row: CsvCells,
  problems: readonly Problem[],
  otherwise: CsvColumn,
): undefined => {
  for (const { code, says, at } of problems)
    row.refuse(columnNamed(at?.field ?? '') ?? otherwise, code, says)
  return undefined
}

const gradeOf = (row: CsvCells, cdl: readonly number[] | undefined): Grade | undefined => {
  const numbers = row.numbers(GRADE_COLUMNS)
  const saturation = row.number('saturation')
  const source = numbers ?? cdl
  if (!source) return undefined
  if (saturation === undefined) {
    if (row.cell('saturation') === '')
      row.refuse('saturation', 'missing', 'The row has a grade without its saturation; give it.')
    return undefined
  }
  const [first, second, third] = triples(source)
  if (numbers) return { lift: first, gamma: second, gain: third, saturation }
  const correction: Cdl = { slope: first, offset: second, power: third, saturation }
  const checked = checkCdl(correction)
  return checked.ok ? cdlToGrade(correction) : refuseAll(row, checked.problems, 'slope R')
}

/**
 * The grade of a row: its lift, gamma and gain, or where these are empty what its slope, offset
 * and power come to; undefined where neither is there. Where both are and disagree, lift, gamma
 * and gain hold, and `tell` is told.
 */
export const readCsvGrade = (
  row: CsvCells,
  tell: (problem: Problem) => void,
): Grade | undefined => {
  const cdl = row.numbers(CDL_COLUMNS)
  const grade = gradeOf(row, cdl)
  if (!grade) return undefined
  const checked = checkGrade(grade)
  if (!checked.ok) return refuseAll(row, checked.problems, 'lift R')
  if (cdl && row.cell('lift R') !== '') {
    const own = numbersOf(gradeToCdl(grade))
    const other = CDL_COLUMNS.find((_, i) => !isAlike(own[i] ?? NaN, cdl[i] ?? NaN))
    if (other)
      tell(
        problem(
          'conflict',
          `Line ${row.line}, column “${other}”: it says ${row.cell(other)}, which lift, gamma and gain do not come to; these were taken.`,
          { line: row.line, field: other },
        ),
      )
  }
  return grade
}
