import { crc32 } from 'node:zlib'
import { decode } from 'tiff'
import { describe, expect, test } from 'vitest'
import { rgbPicture } from '../../src/core/picture/rgbPicture.ts'
import { rate } from '../../src/core/time/rate.ts'
import { decodeDpx } from '../../src/media/dpx/decodeDpx.ts'
import { encodeStill } from '../../src/media/encodeStill.ts'
import type { StillSignal } from '../../src/media/stillPicture.ts'
import { orThrow } from './support/orThrow.ts'

const words = (signal: StillSignal, pixelAspect = 1) => ({
  name: 'a',
  signal,
  pixelAspect,
  rate: rate(25),
  timecode: '10:00:00:00',
})

/** The chunks of a PNG file with their data, each checked by its own sum (ISO/IEC 15948 §5.3). */
const chunksOf = (png: Uint8Array): ReadonlyMap<string, readonly number[]> => {
  const view = new DataView(png.buffer, png.byteOffset)
  const chunks = new Map<string, readonly number[]>()
  for (let at = 8; at < png.length; ) {
    const length = view.getUint32(at)
    const body = png.subarray(at + 4, at + 8 + length)
    expect(view.getUint32(at + 8 + length)).toBe(crc32(body))
    chunks.set(String.fromCharCode(...body.subarray(0, 4)), [...body.subarray(4)])
    at += 12 + length
  }
  return chunks
}

describe('PNG', () => {
  test.each([
    ['bt709', 1080, [1, 1, 0, 1]],
    ['bt601', 576, [5, 6, 0, 1]],
    ['bt601', 480, [6, 6, 0, 1]],
    ['bt2020', 2160, [9, 14, 0, 1]],
    ['printing-density', 1556, undefined],
    ['as-scanned', 1556, undefined],
  ] as const)(
    '%s of %i lines has the code points of ITU-T H.273',
    async (signal, height, points) => {
      const { bytes } = await encodeStill(rgbPicture(1, height), words(signal), 'png')
      const chunks = chunksOf(bytes)
      expect(chunks.get('cICP')).toEqual(points)
      const order = [...chunks.keys()]
      expect(order.at(-1)).toBe('IEND')
      if (points) expect(order.indexOf('cICP')).toBeLessThan(order.indexOf('IDAT'))
    },
  )
  test('pixels that are not square are told: 1.5 times as wide, so fewer go across', async () => {
    const { bytes } = await encodeStill(rgbPicture(2, 2), words('bt709', 1.5), 'png')
    const told = new DataView(Uint8Array.from(chunksOf(bytes).get('pHYs') ?? []).buffer)
    expect(told.getUint32(4) / told.getUint32(0)).toBe(1.5)
    expect(told.getUint8(8)).toBe(0)
  })
})

test('TIFF tells the shape of its pixels, and what its codes are', async () => {
  const { bytes } = await encodeStill(rgbPicture(3, 2), words('printing-density', 1.25), 'tiff')
  const [page] = decode(bytes)
  expect(page).toMatchObject({ width: 3, height: 2, bitsPerSample: 16, compression: 1, type: 2 })
  expect((page?.yResolution ?? 0) / (page?.xResolution ?? 1)).toBe(1.25)
  expect(page?.get('ImageDescription')).toMatch(/^printing density, full range/u)
})

test.each([
  ['bt709', 1080, 6],
  ['bt601', 576, 7],
  ['bt601', 486, 8],
  ['bt2020', 2160, 6],
  ['printing-density', 1556, 1],
  ['as-scanned', 1556, 0],
] as const)('DPX of %s, %i lines, has the transfer %i', async (signal, height, transfer) => {
  const { bytes } = await encodeStill(rgbPicture(1, height), words(signal), 'dpx')
  expect(orThrow(decodeDpx(bytes, 'a')).header.transfer).toBe(transfer)
})

test('levels are rounded to codes; past black and peak they are clipped, and counted once a pixel', async () => {
  const picture = rgbPicture(4, 1)
  picture.r.set([-0.01, 0.5, 1.2, -0.0004])
  picture.g.set([0, 0.5 + 0.6 / 1023, 1.3, 1.0004])
  picture.b.set([1, 0, Number.NaN, 0])
  const { bytes, clipped } = await encodeStill(picture, words('bt709'), 'dpx')
  const { samples } = orThrow(decodeDpx(bytes, 'a')).planes
  expect(samples.map((plane) => [...plane])).toEqual([
    [0, 512, 1023, 0],
    [0, 512, 1023, 1023],
    [1023, 0, 0, 0],
  ])
  expect(clipped).toBe(2)
})
