import type { Grade } from '../../src/core/colour/grade.ts'
import { decodePlanes } from '../../src/core/picture/decodePlanes.ts'
import { framePictureLinear } from '../../src/core/picture/framePictureLinear.ts'
import type { Framing } from '../../src/core/picture/framing.ts'
import { gradePicture } from '../../src/core/picture/gradePicture.ts'
import type { Coding, Planes } from '../../src/core/picture/planes.ts'
import type { RgbPicture } from '../../src/core/picture/rgbPicture.ts'

/** `deliverPicture` as the preview draws it: framed by linear interpolation. */
export const previewPicture = (
  planes: Planes,
  coding: Coding,
  grade: Grade,
  framing: Framing,
): RgbPicture =>
  framePictureLinear(gradePicture(decodePlanes(planes, coding), grade), framing, coding.pixelAspect)
