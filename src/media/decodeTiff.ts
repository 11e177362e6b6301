import { problem } from '../core/base/problem.ts'
import { fail, ok, type Result } from '../core/base/result.ts'
import type { Planes } from '../core/picture/planes.ts'
import { planesFromInterleaved } from './planesFromInterleaved.ts'

const messageOf = (error: unknown): string =>
  error instanceof Error ? error.message : String(error)

/** A TIFF 6.0 picture of 8 or 16 bits, grey or R′G′B′ → R′G′B′ planes; extra samples left out. */
export const decodeTiff = async (bytes: Uint8Array, name: string): Promise<Result<Planes>> => {
  const { decode } = await import('tiff')
  try {
    const [page] = decode(bytes, { pages: [0] })
    const data = page?.data
    if (!page || !(data instanceof Uint8Array || data instanceof Uint16Array))
      return fail(
        problem('cannot-decode', `${name} is not 8 or 16 bits a sample; convert it.`, {
          file: name,
        }),
      )
    const { width, height, bitsPerSample, components } = page
    return ok(planesFromInterleaved(data, width, height, components, bitsPerSample))
  } catch (error) {
    return fail(
      problem('malformed', `${name} cannot be read as TIFF: ${messageOf(error)}.`, { file: name }),
    )
  }
}
