import { TRANSFER_FORMAT_FACTS, type TransferFormat } from './transferSettings.ts'

const DIGITS = 7

/** Name of the file of written frame `at` (0 the first, with the head) of a sequence. */
export const frameFileName = (stem: string, at: number, format: TransferFormat): string =>
  `${stem}_${String(at).padStart(DIGITS, '0')}.${TRANSFER_FORMAT_FACTS[format].extension}`
