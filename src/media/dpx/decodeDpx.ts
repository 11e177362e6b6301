import { problem } from '../../core/base/problem.ts'
import { fail, ok, type Result } from '../../core/base/result.ts'
import type { Planes } from '../../core/picture/planes.ts'
import { viewOf } from '../readAt.ts'
import { type DpxHeader, readDpxHeader } from './readDpxHeader.ts'
import { dpxLines, unpackDpx } from './unpackDpx.ts'

/** A DPX picture: its codes as they are, and what its header says. */
export type DpxPicture = { readonly header: DpxHeader; readonly planes: Planes }

/**
 * A DPX picture (SMPTE ST 268-1) of 8, 10, 12 or 16 bits → R′G′B′ planes of the same bits; alpha is
 * left out. Refuses what `readDpxHeader` does, and a file that ends before its picture.
 */
export const decodeDpx = (bytes: Uint8Array, name: string): Result<DpxPicture> => {
  const read = readDpxHeader(bytes, name)
  if (!read.ok) return read
  const header = read.value
  const { width, height, depth, dataOffset } = header
  const lines = dpxLines(header, bytes.length - dataOffset)
  const missing = dataOffset + lines.bytes - bytes.length
  if (missing > 0)
    return fail(
      problem(
        'malformed',
        `${name} is cut short: its picture of ${width} × ${height} at ${depth} bits needs ${missing} bytes more. Get it again from where it came.`,
        { file: name, byte: bytes.length },
      ),
    )
  const samples = unpackDpx(viewOf(bytes), header, lines)
  return ok({ header, planes: { width, height, layout: 'rgb', depth, samples } })
}
