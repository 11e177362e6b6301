import type { Coding } from '../picture/planes.ts'
import type { Reel } from './job.ts'

/** How a reel's scan is read. */
export const codingOf = ({ media, base }: Reel): Coding => ({
  matrix: media.matrix,
  range: media.range,
  base,
})
