import { problem } from '../core/base/problem.ts'
import { fail, ok, type Result } from '../core/base/result.ts'
import type { Planes } from '../core/picture/planes.ts'
import { planesFromInterleaved } from './planesFromInterleaved.ts'

const messageOf = (error: unknown): string =>
  error instanceof Error ? error.message : String(error)

/** A PNG picture (ISO/IEC 15948) of 8 or 16 bits → R′G′B′ planes; alpha is left out. */
export const decodePng = async (bytes: Uint8Array, name: string): Promise<Result<Planes>> => {
  const { convertIndexedToRgb, decode } = await import('fast-png')
  try {
    const png = decode(bytes)
    const { width, height, depth, channels, palette } = png
    if (palette) {
      const data = convertIndexedToRgb(png)
      const stride = data.length / (width * height)
      return ok(planesFromInterleaved(data, width, height, stride, 8))
    }
    if (depth !== 8 && depth !== 16)
      return fail(
        problem('cannot-decode', `${name} has ${depth} bits a sample; convert it to 8 or 16.`, {
          file: name,
        }),
      )
    const data = png.data instanceof Uint16Array ? png.data : new Uint8Array(png.data)
    return ok(planesFromInterleaved(data, width, height, channels, depth))
  } catch (error) {
    return fail(
      problem('malformed', `${name} is not a whole PNG picture: ${messageOf(error)}.`, {
        file: name,
      }),
    )
  }
}
