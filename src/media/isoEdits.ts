import { innerBoxes } from './isoBoxes.ts'
import { viewOf } from './readAt.ts'

/** What a track's edit list presents (ISO/IEC 14496-12 §8.6.6). */
export type Edits = {
  /** How many stretches of the track are shown. */
  readonly stretches: number
  /** Seconds at which the first of them ends; undefined where it goes on to the end. */
  readonly end: number | undefined
}

const bodyOf = (bytes: Uint8Array, ...path: readonly string[]): Uint8Array | undefined => {
  const [kind, ...deeper] = path
  if (kind === undefined) return bytes
  for (const box of innerBoxes(bytes)) if (box.kind === kind) return bodyOf(box.body, ...deeper)
  return undefined
}

/** A field of a box that lies further on in version 1, whose times have 64 bits. */
const field = (body: Uint8Array | undefined, at: number, atInVersion1: number): number => {
  const place = body?.[0] === 1 ? atInVersion1 : at
  return body && body.length >= place + 4 ? viewOf(body).getUint32(place) : 0
}

const readEdits = (elst: Uint8Array, timescale: number): Edits => {
  const view = viewOf(elst)
  const isLong = elst[0] === 1
  const size = isLong ? 20 : 12
  const entries = Math.min(view.getUint32(4), Math.floor((elst.length - 8) / size))
  let before = 0
  let stretches = 0
  let end: number | undefined
  for (let i = 0; i < entries; i++) {
    const at = 8 + size * i
    const duration = isLong ? Number(view.getBigUint64(at)) : view.getUint32(at)
    const from = isLong ? Number(view.getBigInt64(at + 8)) : view.getInt32(at + 4)
    if (from === -1) {
      before += duration
      continue
    }
    stretches++
    if (stretches === 1 && duration > 0 && timescale > 0) end = (before + duration) / timescale
  }
  return { stretches, end }
}

/** The edit list of a track, by the track's number, out of a file's `moov` box. */
export const editsOf = (movie: Uint8Array, track: number): Edits | undefined => {
  const moov = bodyOf(movie, 'moov')
  if (!moov) return undefined
  const timescale = field(bodyOf(moov, 'mvhd'), 12, 20)
  for (const { kind, body } of innerBoxes(moov)) {
    if (kind !== 'trak' || field(bodyOf(body, 'tkhd'), 12, 20) !== track) continue
    const elst = bodyOf(body, 'edts', 'elst')
    return elst && elst.length >= 8 ? readEdits(elst, timescale) : undefined
  }
  return undefined
}
