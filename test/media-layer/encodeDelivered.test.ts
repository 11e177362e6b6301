import { deflateSync, inflateSync, crc32 as nodeCrc32 } from 'node:zlib'
import { decode } from 'fast-png'
import { describe, expect, test } from 'vitest'
import type { StillFormat } from '../../src/core/formats/stillFormats.ts'
import type { RgbPicture } from '../../src/core/picture/rgbPicture.ts'
import { rate } from '../../src/core/time/rate.ts'
import { layDelivered } from '../../src/core/transfer/layDelivered.ts'
import { crc32 } from '../../src/media/crc32.ts'
import { deflateByStream } from '../../src/media/deflate.ts'
import { encodeDelivered, STILL_FORMS } from '../../src/media/encodeDelivered.ts'
import { encodeStill } from '../../src/media/encodeStill.ts'
import { deflateNode } from '../../src/media/node/deflateNode.ts'
import type { StillSignal } from '../../src/media/stillPicture.ts'

const words = (signal: StillSignal, pixelAspect: number) => ({
  name: 'a',
  signal,
  pixelAspect,
  rate: rate(25),
  timecode: '10:00:00:00',
})

/** Levels from below black to above peak. */
const picture = (width: number, height: number): RgbPicture => {
  const plane = (step: number) =>
    Float64Array.from({ length: width * height }, (_, i) => ((i * step) % 1.3) - 0.1)
  return { width, height, r: plane(0.0137), g: plane(0.211), b: plane(0.00071) }
}

describe.each(['dpx', 'tiff', 'png'] as const)('%s of laid-out bytes', (format: StillFormat) => {
  test.each([
    [1, 1],
    [37, 23],
    [64, 32],
  ])('%i×%i is byte for byte the still of the same picture', async (width, height) => {
    for (const signal of ['bt601', 'bt709', 'bt2020'] as const)
      for (const pixelAspect of [1, 1.4568])
        for (const deflate of [deflateByStream, deflateNode]) {
          const told = words(signal, pixelAspect)
          const still = await encodeStill(picture(width, height), told, format, deflate)
          const { bytes, clipped } = layDelivered(picture(width, height), STILL_FORMS[format])
          expect(await encodeDelivered(bytes, { width, height }, told, format, deflate)).toEqual(
            still.bytes,
          )
          expect(clipped).toBe(still.clipped)
        }
  })
})

test('a PNG file is read back with every code, whichever deflated it', async () => {
  const { bytes } = layDelivered(picture(41, 19), STILL_FORMS.png)
  const view = new DataView(bytes.buffer)
  const codes = Array.from({ length: bytes.length / 2 }, (_, i) => view.getUint16(2 * i))
  for (const deflate of [deflateByStream, deflateNode]) {
    const size = { width: 41, height: 19 }
    const png = decode(await encodeDelivered(bytes, size, words('bt709', 1), 'png', deflate), {
      checkCrc: true,
    })
    expect(png).toMatchObject({ width: 41, height: 19, depth: 16, channels: 3 })
    expect(png.text).toEqual({
      Software: 'Reelwright',
      Description: "R'G'B' of BT.709, full range",
    })
    expect([...png.data]).toEqual(codes)
  }
})

test('both ways to deflate keep what they are given, and give the same each time', async () => {
  const bytes = Uint8Array.from({ length: 70_001 }, (_, i) => (i * i) >> 7)
  for (const deflate of [deflateByStream, deflateNode]) {
    const small = await deflate(bytes)
    expect(new Uint8Array(inflateSync(small))).toEqual(bytes)
    expect(await deflate(bytes)).toEqual(small)
    expect((await deflate(new Uint8Array(0))).length).toBe(deflateSync('').length)
  }
})

test('the check of a chunk is that of zlib, of any length and in parts', () => {
  const bytes = Uint8Array.from({ length: 300 }, (_, i) => (i * 7919) >> 3)
  for (let length = 0; length <= 300; length++) {
    const part = bytes.subarray(0, length)
    expect(crc32(part)).toBe(nodeCrc32(part))
    expect(crc32(part.subarray(0, length >> 1), part.subarray(length >> 1))).toBe(nodeCrc32(part))
  }
  // The catalogue value of CRC-32 over '123456789' (from memory).
  expect(crc32(new TextEncoder().encode('123456789'))).toBe(0xcbf43926)
})
