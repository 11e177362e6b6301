import { describe, expect, test } from 'vitest'
import { at } from '../../src/core/base/assert.ts'
import { chromaToCode, codeScale, signalToCode } from '../../src/core/colour/codeValues.ts'
import type { Triple } from '../../src/core/colour/triple.ts'
import { rgbToYCbCr } from '../../src/core/colour/yCbCr.ts'
import { decodePlanes } from '../../src/core/picture/decodePlanes.ts'
import { encodePicture } from '../../src/core/picture/encodePicture.ts'
import type { Planes, RangeName } from '../../src/core/picture/planes.ts'
import { noisePlanes, seeded } from '../kernel/randomPictures.ts'
import { encodeByFfmpeg, readFrame, ZSCALE_MATRIX, ZSCALE_RANGE } from './ffmpeg.ts'

const SIZE = { width: 320, height: 214 }
const CLIP = 'test/media/video/bbb-opening-480p24.mp4'

const FRAMES: readonly (readonly [string, (depth: number) => Planes])[] = [
  ['a photograph', (depth) => readFrame('samples/photographs/coffee.jpg', SIZE, 'rgb', depth)],
  ['a frame of a clip', (depth) => readFrame(CLIP, SIZE, 'rgb', depth, 13)],
  ['chance colours', (depth) => noisePlanes(seeded(depth), 'rgb', depth, SIZE.width, SIZE.height)],
]

/** What float32 may be off before it is rounded to a code, in codes. */
const FLOAT32 = 2e-3

/** Y′, Cb, Cr in codes, not rounded, inside what the bits can hold. */
const unrounded = ([y, cb, cr]: Triple, depth: number, range: RangeName): Triple => {
  const { black, peak, chromaZero, chromaHalf, largest } = codeScale(depth, range)
  const kept = (code: number) => Math.min(largest, Math.max(0, code))
  const chroma = (value: number) => kept(chromaZero + 2 * chromaHalf * value)
  return [kept(black + (peak - black) * y), chroma(cb), chroma(cr)]
}

describe.each(FRAMES)('%s', (name, frame) => {
  test.each([8, 10])('is encoded in %i bits as ffmpeg does it, within one code', (depth) => {
    const planes = frame(depth)
    const picture = decodePlanes(planes, { matrix: 'bt709', range: 'full' })
    const count = picture.r.length
    let codes = 0
    let different = 0
    let largest = 0
    let past = 0
    for (const matrix of ['bt601', 'bt709', 'bt2020'] as const) {
      const narrow = encodePicture(picture, matrix, depth)
      for (const range of ['narrow', 'full'] as const) {
        const target = `matrix=${ZSCALE_MATRIX[matrix]}:range=${ZSCALE_RANGE[range]}`
        const filter = `zscale=matrixin=gbr:rangein=full:${target}`
        const theirs = encodeByFfmpeg(planes, filter, depth)
        codes += 3 * count
        for (let i = 0; i < count; i++) {
          const rgb: Triple = [at(picture.r, i), at(picture.g, i), at(picture.b, i)]
          const yCbCr = rgbToYCbCr(rgb, matrix)
          const exact = unrounded(yCbCr, depth, range)
          for (const c of [0, 1, 2] as const) {
            const code = c === 0 ? signalToCode : chromaToCode
            const ours =
              range === 'narrow' ? at(narrow.samples[c], i) : code(yCbCr[c], depth, range)
            const other = at(theirs.samples[c], i)
            if (ours !== other) different++
            largest = Math.max(largest, Math.abs(ours - other))
            past = Math.max(past, Math.abs(other - exact[c]))
          }
        }
      }
    }
    console.log(
      `${name}, ${depth} bits: largest difference from ffmpeg ${largest}; ${different} of ${codes} ` +
        `codes differ; furthest of ffmpeg's from the value before rounding ${past.toFixed(5)}`,
    )
    expect(largest).toBeLessThanOrEqual(1)
    // Where codes differ, the value lay half-way: float32 or another rule for halves decided.
    expect(past).toBeLessThan(0.5 + FLOAT32)
  })
})
