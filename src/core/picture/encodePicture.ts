import { at } from '../base/assert.ts'
import { chromaToCode, signalToCode } from '../colour/codeValues.ts'
import { rgbToYCbCr } from '../colour/yCbCr.ts'
import type { MatrixName, Planes } from './planes.ts'
import type { RgbPicture } from './rgbPicture.ts'

/**
 * R′G′B′ → Y′CbCr 4:4:4 in narrow-range codes of `depth` bits (8…16) by `matrix`, rounded; codes
 * outside the nominal range are kept as far as `depth` bits can hold them.
 */
export const encodePicture = (picture: RgbPicture, matrix: MatrixName, depth: number): Planes => {
  const { width, height } = picture
  const plane = () => (depth > 8 ? new Uint16Array(width * height) : new Uint8Array(width * height))
  const samples = [plane(), plane(), plane()] as const
  for (let i = 0; i < width * height; i++) {
    const [y, cb, cr] = rgbToYCbCr([at(picture.r, i), at(picture.g, i), at(picture.b, i)], matrix)
    samples[0][i] = signalToCode(y, depth, 'narrow')
    samples[1][i] = chromaToCode(cb, depth, 'narrow')
    samples[2][i] = chromaToCode(cr, depth, 'narrow')
  }
  return { width, height, layout: '444', depth, samples }
}
