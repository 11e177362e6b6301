import type { Problem } from '../core/base/problem.ts'
import { findIsoBoxes } from './isoBoxes.ts'
import { areTablesFaulty } from './isoTables.ts'
import { endOfSegment } from './matroskaEnd.ts'
import type { ReadAt } from './readAt.ts'
import { cutShortFile, damagedFile } from './refusals.ts'

/** Sample tables larger than this are not looked into. */
const LARGEST_TABLES = 256 * 2 ** 20

/**
 * What is wrong with a video file by the sizes and counts written in it, without decoding
 * anything: whether it ends too early, or its tables cannot be true. Only for the MP4 and
 * Matroska families, which state their sizes.
 */
export const findDamage = async (
  name: string,
  container: string,
  size: number,
  readAt: ReadAt,
): Promise<Problem | undefined> => {
  const isIso = container === 'MP4' || container === 'MOV'
  if (!isIso && container !== 'Matroska' && container !== 'WebM') return undefined
  if (!isIso) {
    const missing = (await endOfSegment(size, readAt)) - size
    return missing > 0 ? cutShortFile(name, container, missing) : undefined
  }
  const { end, movie } = await findIsoBoxes(size, readAt)
  if (end > size) return cutShortFile(name, container, end - size)
  if (!movie || movie.length > LARGEST_TABLES) return undefined
  const moov = await readAt(movie.offset, movie.length)
  return areTablesFaulty(moov, size)
    ? damagedFile(name, container, 'its tables speak of far more pictures than it holds')
    : undefined
}
