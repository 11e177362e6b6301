import { innerBoxes } from './isoBoxes.ts'
import { viewOf } from './readAt.ts'

const CONTAINERS = ['moov', 'trak', 'mdia', 'minf']

/** How many samples a table of (count, value) pairs is for, after version, flags and its length. */
const countPairs = (body: Uint8Array): number => {
  const view = viewOf(body)
  const entries = Math.min(view.getUint32(4), Math.floor((body.length - 8) / 8))
  let sum = 0
  for (let i = 0; i < entries; i++) sum += view.getUint32(8 + 8 * i)
  return sum
}

/** How many samples there are; infinitely many where the file has no room for them. */
const countSizes = (body: Uint8Array, fileSize: number): number => {
  const view = viewOf(body)
  const each = view.getUint32(4)
  const count = view.getUint32(8)
  const room = each === 0 ? (body.length - 12) / 4 : fileSize / each
  return count > room ? Number.POSITIVE_INFINITY : count
}

/** Sample tables of one track, ISO/IEC 14496-12 §8.6 (times) and §8.7 (sizes). */
const isTrackFaulty = (stbl: Uint8Array, fileSize: number): boolean => {
  let samples = 0
  let timed = 0
  for (const { kind, body } of innerBoxes(stbl)) {
    if (body.length < 12) continue
    if (kind === 'stts' || kind === 'ctts') timed = Math.max(timed, countPairs(body))
    if (kind === 'stsz') samples = countSizes(body, fileSize)
    if (kind === 'stz2') samples = viewOf(body).getUint32(8)
  }
  return samples === Number.POSITIVE_INFINITY || timed > 2 * samples + 1000
}

/**
 * Whether the sample tables inside `moov` speak of far more samples than there are: a damaged
 * file that would be taken for one of thousands of millions of pictures.
 */
export const areTablesFaulty = (bytes: Uint8Array, fileSize: number): boolean => {
  for (const { kind, body } of innerBoxes(bytes)) {
    if (kind === 'stbl' && isTrackFaulty(body, fileSize)) return true
    if (CONTAINERS.includes(kind) && areTablesFaulty(body, fileSize)) return true
  }
  return false
}
