import type { MediaFacts } from '../mediaFacts.ts'
import { DPX_TRANSFER } from './dpxFields.ts'
import type { DpxHeader } from './readDpxHeader.ts'

/** What a picture file states of the reel it belongs to. */
export type PictureFacts = Pick<MediaFacts, 'rate' | 'range' | 'scanHint' | 'startTimecode'> & {
  readonly pixelAspect: number
}

/**
 * What a DPX header states of a reel. Transfer characteristics printing density and logarithmic are
 * both read as the levels being printing density: scans of film are marked either way (common
 * practice, no published source).
 */
export const dpxFacts = ({
  rate,
  range,
  pixelAspect,
  transfer,
  timecode,
}: DpxHeader): PictureFacts => ({
  rate,
  range,
  pixelAspect,
  ...(transfer === DPX_TRANSFER.printingDensity || transfer === DPX_TRANSFER.logarithmic
    ? { scanHint: 'printing-density' as const }
    : {}),
  ...(timecode === undefined ? {} : { startTimecode: timecode }),
})
