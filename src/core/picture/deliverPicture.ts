import type { Grade } from '../colour/grade.ts'
import { decodePlanes } from './decodePlanes.ts'
import { framePicture } from './framePicture.ts'
import type { Framing } from './framing.ts'
import { gradePicture } from './gradePicture.ts'
import type { Coding, Planes } from './planes.ts'
import type { RgbPicture } from './rgbPicture.ts'

/** The stages from file samples to the delivered R′G′B′ picture: decode, grade, frame. */
export const deliverPicture = (
  planes: Planes,
  coding: Coding,
  grade: Grade,
  framing: Framing,
): RgbPicture =>
  framePicture(gradePicture(decodePlanes(planes, coding), grade), framing, coding.pixelAspect)
