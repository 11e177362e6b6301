import type { Triple } from '../../colour/triple.ts'
import type { MatrixStep } from '../../process/processList.ts'
import { type ClfOperator, neededChild, numbersOf, refuse } from './clfOperator.ts'

/** Columns by the dimensions written: rows and columns, in version 2 the channels after them. */
const COLUMNS: ReadonlyMap<string, 3 | 4> = new Map([
  ['3 3', 3],
  ['3 4', 4],
  ['3 3 3', 3],
  ['3 4 3', 4],
])

/** A Matrix: rows of three numbers, or of four with the offset last, taken from codes to signal. */
export const readClfMatrix = (operator: ClfOperator): MatrixStep | undefined => {
  const { element, inScale, outScale } = operator
  const array = neededChild(operator, element, 'Array')
  if (!array) return undefined
  const dim = (array.attributes.get('dim') ?? '').trim().replace(/\s+/gu, ' ')
  const columns = COLUMNS.get(dim)
  if (columns === undefined)
    return refuse(operator, array, 'malformed', 'of a Matrix must have the dim “3 3” or “3 4”')
  const values = numbersOf(operator, array, 3 * columns)
  if (!values) return undefined
  const at = (row: number, column: number): number => values[row * columns + column] ?? 0
  const row = (r: number): Triple => {
    const scaled = (c: number) => (at(r, c) * inScale) / outScale
    return [scaled(0), scaled(1), scaled(2)]
  }
  const offset = (r: number): number => (columns === 4 ? at(r, 3) / outScale : 0)
  return {
    kind: 'matrix',
    rows: [row(0), row(1), row(2)],
    offset: [offset(0), offset(1), offset(2)],
  }
}
