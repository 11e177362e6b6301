import { isSequence, TRANSFER_FORMAT_FACTS, type TransferFormat } from './transferSettings.ts'

/** Frames of 100 hours at 25 a second have seven digits: names sort as their frames do. */
const DIGITS = 7

/**
 * Name of the file that begins with written frame `at` (0 the first, with the head): of a sequence
 * its picture, else a stretch of the video.
 */
export const frameFileName = (stem: string, at: number, format: TransferFormat): string =>
  `${stem}_${String(at).padStart(DIGITS, '0')}.${isSequence(format) ? TRANSFER_FORMAT_FACTS[format].extension : 'nut'}`
