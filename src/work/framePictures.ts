import type { Grade } from '../core/colour/grade.ts'
import type { Framing } from '../core/picture/framing.ts'
import type { Coding, Planes } from '../core/picture/planes.ts'
import type { FramePictures } from '../core/report/reportFacts.ts'
import type { Frame } from '../core/time/frame.ts'
import type { Kernel } from '../kernel/kernel.ts'
import { pngDataUri } from '../media/pngDataUri.ts'
import { makeStill } from './makeStill.ts'

/** A frame to be shown in a report, `width`×`height` pixels large. */
export type PicturesRequest = {
  readonly frame: Frame
  readonly coding: Coding
  readonly grade: Grade
  readonly framing: Framing
  readonly width: number
  readonly height: number
}

/**
 * Small pictures of a frame for a report: as scanned, after the base, and as it would be
 * delivered. The delivered picture is made whole and then made small, as a monitor would show it.
 */
export const framePictures = async (
  planes: Planes,
  kernel: Kernel,
  { frame, coding, grade, framing, width, height }: PicturesRequest,
): Promise<FramePictures> => {
  const { matrix } = coding
  const { y, cb, cr } = kernel.deliverCodes({ planes, coding, grade, framing }, matrix)
  const delivered: Planes = {
    width: planes.width,
    height: planes.height,
    layout: '444',
    depth: 10,
    samples: [y, cb, cr],
  }
  const scanned = makeStill(planes, coding, width, height)
  const graded = makeStill(delivered, { matrix, range: 'narrow' }, width, height)
  return {
    frame,
    scanned: await pngDataUri(scanned, matrix),
    graded: await pngDataUri(graded, matrix),
  }
}
