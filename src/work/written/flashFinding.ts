import { FLASH_CAUTION } from '../../core/flashes/caution.ts'
import { type FlashReport, isWithinFlashLimits } from '../../core/flashes/flashReport.ts'
import { FLASH_NAMES, flashWords } from '../../core/flashes/flashWords.ts'
import type { PassFinding } from '../../core/transfer/passRecord.ts'

/** Breaches that are told with their frames, at most. */
const MOST_TOLD = 5

/**
 * What the file holds of flashes, with the caution that every such result carries. Not known where
 * fewer than the reel's `frames` could be watched.
 */
export const flashFinding = (report: FlashReport, frames: number): PassFinding => {
  const { breaches } = report
  if (isWithinFlashLimits(report) && report.frames < frames)
    return {
      check: 'flashes',
      standing: 'not known',
      says: `Only the first ${report.frames} of the reel’s ${frames} frames could be watched for flashes. ${FLASH_CAUTION}`,
    }
  if (isWithinFlashLimits(report))
    return {
      check: 'flashes',
      standing: 'right',
      says: `No limit of flashes or stripes is passed. ${FLASH_CAUTION}`,
    }
  const told = breaches
    .slice(0, MOST_TOLD)
    .map(
      (breach) =>
        `${FLASH_NAMES[breach.kind]} in frames ${breach.first} to ${breach.last}: ${flashWords(breach)}`,
    )
  const more = breaches.length > MOST_TOLD ? `; and ${breaches.length - MOST_TOLD} more` : ''
  return {
    check: 'flashes',
    standing: 'wrong',
    says: `${told.join('; ')}${more}. ${FLASH_CAUTION}`,
  }
}
