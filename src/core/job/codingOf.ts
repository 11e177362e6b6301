import { PRINT_BASE, sameBase } from '../film/filmBase.ts'
import type { Coding } from '../picture/planes.ts'
import type { Reel } from './job.ts'

/** How a reel's scan is read. */
export const codingOf = ({ media, base }: Reel): Coding => ({
  matrix: media.matrix,
  range: media.range,
  base,
  pixelAspect: media.displayAspect / (media.width / media.height),
})

/** Whether code values mean the same picture by both. */
export const sameCoding = (a: Coding, b: Coding): boolean =>
  a.matrix === b.matrix &&
  a.range === b.range &&
  (a.pixelAspect ?? 1) === (b.pixelAspect ?? 1) &&
  sameBase(a.base ?? PRINT_BASE, b.base ?? PRINT_BASE)
