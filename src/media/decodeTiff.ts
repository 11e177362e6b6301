import { problem } from '../core/base/problem.ts'
import { fail, ok, type Result } from '../core/base/result.ts'
import type { Planes } from '../core/picture/planes.ts'
import { planesFromInterleaved } from './planesFromInterleaved.ts'

const messageOf = (error: unknown): string =>
  error instanceof Error ? error.message : String(error)

/** Values of the tags PhotometricInterpretation and PlanarConfiguration, TIFF 6.0 §3, §4. */
const PALETTE = 3
const PLANE_BY_PLANE = 2

/**
 * A TIFF 6.0 picture of 8 or 16 bits, grey, R′G′B′ or with a colour map (which has 16 bits) →
 * R′G′B′ planes; extra samples are left out. Of a file with several pictures, the first.
 */
export const decodeTiff = async (bytes: Uint8Array, name: string): Promise<Result<Planes>> => {
  const { decode } = await import('tiff')
  const refuse = (what: string) =>
    fail(
      problem('cannot-decode', `${name} ${what}; convert it to PNG or plain TIFF.`, { file: name }),
    )
  try {
    const [page] = decode(bytes, { pages: [0] })
    if (!page) return refuse('holds no picture')
    const { data, width, height, bitsPerSample: depth, components, palette } = page
    if (
      !(data instanceof Uint8Array || data instanceof Uint16Array) ||
      (depth !== 8 && depth !== 16)
    )
      return refuse('is not of 8 or 16 bits a sample')
    if (components > 1 && page.get('PlanarConfiguration') === PLANE_BY_PLANE)
      return refuse('stores its colours one after another')
    if (page.type !== PALETTE)
      return ok(planesFromInterleaved(data, width, height, components, depth))
    if (!palette) return refuse('lacks its colour map')
    const colours = new Uint16Array(3 * width * height)
    for (let i = 0; i < width * height; i++) colours.set(palette[data[i] ?? 0] ?? [], 3 * i)
    return ok(planesFromInterleaved(colours, width, height, 3, 16))
  } catch (error) {
    return fail(
      problem('malformed', `${name} cannot be read as TIFF: ${messageOf(error)}.`, { file: name }),
    )
  }
}
