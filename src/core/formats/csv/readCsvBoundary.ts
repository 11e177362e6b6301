import type { BoundaryFound } from '../../job/job.ts'
import { cueSchema } from '../job/jobSchema.ts'
import type { CsvCells } from './csvCells.ts'

const KINDS = cueSchema.entries.boundary.entries.kind.options

/**
 * How a row's cue begins and how sure that is; a boundary without its confidence is sure, as a
 * person wrote it. Undefined where the row does not state it or, which is told, it cannot be read.
 */
export const readCsvBoundary = (row: CsvCells): BoundaryFound | undefined => {
  const said = row.cell('boundary').toLowerCase()
  const confidence = row.number('confidence', 0, 1)
  if (said === '')
    return row.cell('confidence') === ''
      ? undefined
      : row.refuse(
          'boundary',
          'missing',
          'The cell is empty while there is a confidence; fill it in, or empty both.',
        )
  const kind = KINDS.find((each) => each === said)
  if (!kind)
    return row.refuse(
      'boundary',
      'malformed',
      `A cue begins with one of ${KINDS.join(', ')}; write one of these.`,
    )
  return { kind, confidence: confidence ?? 1 }
}
