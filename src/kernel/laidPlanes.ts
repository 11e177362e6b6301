import { type DeliveredForm, deliveredBytes } from '../core/transfer/deliveredForm.ts'
import type { RowRange } from './sourceRows.ts'

/** One plane of a laid-out picture: bytes of a line of it, and how it follows delivered rows. */
export type LaidPlane = {
  readonly lineBytes: number
  /** The byte of the whole picture where it begins. */
  readonly from: number
  /** Its lines that are done once these rows of a picture `height` high are. */
  readonly linesOf: (rows: RowRange, height: number) => RowRange
}

const everyLine = (rows: RowRange): RowRange => rows

/** A line of two rows is done with the lower of them, or with the last row. */
const everySecondLine = ({ first, end }: RowRange, height: number): RowRange => ({
  first: first >> 1,
  end: end === height ? (end + 1) >> 1 : end >> 1,
})

/** The planes of a form, in their order; one where pixels are whole. */
export const laidPlanes = (
  form: DeliveredForm,
  width: number,
  height: number,
): readonly LaidPlane[] => {
  if (form.kind !== 'planes')
    return [{ lineBytes: deliveredBytes(form, width, 1), from: 0, linesOf: everyLine }]
  const bytes = form.depth > 8 ? 2 : 1
  const columns = form.layout === '444' ? width : (width + 1) >> 1
  const lines = form.layout === '420' ? (height + 1) >> 1 : height
  const linesOf = form.layout === '420' ? everySecondLine : everyLine
  const lineBytes = bytes * columns
  const luma = bytes * width * height
  return [
    { lineBytes: bytes * width, from: 0, linesOf: everyLine },
    { lineBytes, from: luma, linesOf },
    { lineBytes, from: luma + lineBytes * lines, linesOf },
  ]
}
