import type { Reel } from '../job/job.ts'
import type { Frame } from '../time/frame.ts'
import { formatTimecode } from '../time/timecode.ts'
import { fileNameOf } from './listNames.ts'
import { STILL_FORMATS, type StillFormat } from './stillFormats.ts'

/** Whether a frame is saved as it is delivered, or as the file of the scan has it. */
export type StillStage = 'graded' | 'scanned'

/** What the file of a frame is called: reel, cue (counted from 1), timecode, and what it shows. */
export const stillFileName = (
  reel: Reel,
  cueNumber: number,
  frame: Frame,
  stage: StillStage,
  format: StillFormat,
): string => {
  const { rate, isDropFrame, startCount } = reel
  const timecode = formatTimecode(startCount + frame, rate, isDropFrame).replace(/[:;]/gu, '-')
  const cue = String(cueNumber).padStart(4, '0')
  return `${fileNameOf(reel)}-cue-${cue}-${timecode}-${stage}.${STILL_FORMATS[format].extension}`
}
