import { expect, test } from 'vitest'
import { at } from '../../src/core/base/assert.ts'
import { decodePlanes } from '../../src/core/picture/decodePlanes.ts'
import type { Coding, Layout, Planes } from '../../src/core/picture/planes.ts'
import { noisePlanes, seeded } from '../kernel/randomPictures.ts'
import { decodeByFfmpeg, readFrame, ZSCALE_MATRIX, ZSCALE_RANGE } from './ffmpeg.ts'

const SIZE = { width: 320, height: 214 }
const CLIP = 'test/media/video/bbb-opening-480p24.mp4'

/** 10-bit codes of narrow range from black to peak. */
const CODES = 876

const CODINGS: readonly Coding[] = [
  { matrix: 'bt601', range: 'narrow' },
  { matrix: 'bt709', range: 'narrow' },
  { matrix: 'bt709', range: 'full' },
  { matrix: 'bt2020', range: 'narrow' },
]

/** The largest difference of R′, G′, B′ from ffmpeg's, in 10-bit codes. */
const difference = (planes: Planes, coding: Coding, siting: string): number => {
  const from = `matrixin=${ZSCALE_MATRIX[coding.matrix]}:rangein=${ZSCALE_RANGE[coding.range]}`
  const filter = `zscale=${from}:chromalin=${siting}:filter=bilinear:matrix=gbr:range=full`
  const theirs = decodeByFfmpeg(planes, filter).rgb
  const { r, g, b } = decodePlanes(planes, coding)
  let largest = 0
  for (const [c, plane] of [r, g, b].entries())
    plane.forEach((level, i) => {
      largest = Math.max(largest, Math.abs(level - at(theirs[c] ?? [], i)))
    })
  return largest * CODES
}

/**
 * zscale keeps float32 all the way, but rounds the chroma of deeper 4:2:2 to its own codes after
 * interpolating it: up to half a code, times 1.8814 in B′ of BT.2020.
 */
test.each<[Layout, number, number]>([
  ['420', 8, 0.001],
  ['420', 10, 0.001],
  ['422', 8, 0.001],
  ['422', 10, 0.942],
  ['444', 8, 0.001],
  ['444', 10, 0.001],
])('%s of %i bits is decoded as ffmpeg does it, within %f codes', (layout, depth, most) => {
  const real = readFrame(CLIP, SIZE, layout, depth, 13)
  const noise = noisePlanes(seeded(depth), layout, depth, SIZE.width, SIZE.height)
  const differences = CODINGS.flatMap((coding) => [
    difference(real, coding, 'left'),
    difference(noise, coding, 'left'),
  ])
  const largest = Math.max(...differences)
  console.log(
    `${layout}, ${depth} bits: largest difference from ffmpeg ${largest.toFixed(5)} codes`,
  )
  expect(largest).toBeLessThan(most)
})

test('chroma sited elsewhere is told from ours', () => {
  const real = readFrame(CLIP, SIZE, '420', 8, 13)
  for (const siting of ['center', 'topleft'])
    expect(difference(real, { matrix: 'bt709', range: 'narrow' }, siting)).toBeGreaterThan(5)
})
