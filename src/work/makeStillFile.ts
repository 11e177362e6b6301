import type { Grade } from '../core/colour/grade.ts'
import { PRINT_BASE } from '../core/film/filmBase.ts'
import type { StillFormat } from '../core/formats/stillFormats.ts'
import type { ValuesAt } from '../core/job/valuesAt.ts'
import { decodeWindow } from '../core/picture/decodeWindow.ts'
import { framePicture } from '../core/picture/framePicture.ts'
import { gradePicture } from '../core/picture/gradePicture.ts'
import type { Coding, Planes } from '../core/picture/planes.ts'
import { type RgbPicture, rgbPicture } from '../core/picture/rgbPicture.ts'
import type { Frame } from '../core/time/frame.ts'
import { type EncodedStill, encodeStill } from '../media/encodeStill.ts'
import type { StillSignal, StillWords } from '../media/stillPicture.ts'

export type StillFileRequest = {
  readonly frame: Frame
  readonly coding: Coding
  /** What the frame is graded and framed by; undefined for the scan as it is, before its base. */
  readonly values: ValuesAt | undefined
  readonly format: StillFormat
  readonly words: Omit<StillWords, 'signal' | 'pixelAspect'>
}

/** Lines that are worked on at once, so that large pictures do not take several times their size. */
const BAND = 64

/** The reference's stages before framing, band by band: the same numbers as of the whole at once. */
const gradedPicture = (planes: Planes, coding: Coding, grade: Grade | undefined): RgbPicture => {
  const { width, height } = planes
  const out = rgbPicture(width, height)
  for (let top = 0; top < height; top += BAND) {
    const window = { left: 0, right: width, top, bottom: Math.min(height, top + BAND) }
    const decoded = decodeWindow(planes, coding, window)
    const band = grade ? gradePicture(decoded, grade) : decoded
    out.r.set(band.r, top * width)
    out.g.set(band.g, top * width)
    out.b.set(band.b, top * width)
  }
  return out
}

const signalOf = ({ base = PRINT_BASE, matrix }: Coding, isGraded: boolean): StillSignal => {
  if (isGraded || base.scan === 'print') return matrix
  return base.scan === 'printing-density' ? 'printing-density' : 'as-scanned'
}

/**
 * A frame as a file: as it is delivered (base, grade, framing, by the float64 reference), or the
 * scan's own levels. Full-range codes; what lies past black or peak is clipped, and counted.
 */
export const makeStillFile = (
  planes: Planes,
  { coding, values, format, words }: StillFileRequest,
): Promise<EncodedStill> => {
  const { base: _, ...asScanned } = coding
  const { pixelAspect = 1 } = coding
  const picture = values
    ? framePicture(gradedPicture(planes, coding, values.grade), values.framing, pixelAspect)
    : gradedPicture(planes, asScanned, undefined)
  const signal = signalOf(coding, values !== undefined)
  return encodeStill(picture, { ...words, signal, pixelAspect }, format)
}
