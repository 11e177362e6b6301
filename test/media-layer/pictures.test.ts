import { describe, expect, test } from 'vitest'
import { decodePng } from '../../src/media/decodePng.ts'
import { decodeTiff } from '../../src/media/decodeTiff.ts'
import { orThrow } from './support/orThrow.ts'
import { drawn, indexedPng, png, tiff } from './support/pictures.ts'

const WIDTH = 7
const HEIGHT = 5
const COUNT = WIDTH * HEIGHT

const channel = (data: Uint8Array | Uint16Array, at: number, of: number) =>
  data.filter((_, i) => i % of === at)

describe.each([8, 16] as const)('%i bits', (depth) => {
  const data = drawn(3, WIDTH, HEIGHT, depth)
  const planes = [0, 1, 2].map((at) => channel(data, at, 3))
  test('a PNG picture of three colours keeps every sample', async () => {
    const read = orThrow(await decodePng(png(data, WIDTH, HEIGHT), 'a.png'))
    expect(read).toMatchObject({ width: WIDTH, height: HEIGHT, layout: 'rgb', depth })
    expect(read.samples).toEqual(planes)
  })
  test.each([{}, { bigEndian: true }, { deflate: true }])(
    'a TIFF picture of three colours keeps every sample %o',
    async (form) => {
      const read = orThrow(await decodeTiff(tiff(data, WIDTH, HEIGHT, form), 'a.tif'))
      expect(read).toMatchObject({ width: WIDTH, height: HEIGHT, layout: 'rgb', depth })
      expect(read.samples).toEqual(planes)
    },
  )
  test('alpha is left out', async () => {
    const four = depth === 8 ? new Uint8Array(COUNT * 4) : new Uint16Array(COUNT * 4)
    for (let i = 0; i < COUNT; i++) {
      four.set(data.subarray(3 * i, 3 * i + 3), 4 * i)
      four[4 * i + 3] = 9 * i
    }
    const fromPng = orThrow(await decodePng(png(four, WIDTH, HEIGHT, 4), 'a.png'))
    expect(fromPng.samples).toEqual(planes)
    const fromTiff = orThrow(await decodeTiff(tiff(four, WIDTH, HEIGHT, { channels: 4 }), 'a.tif'))
    expect(fromTiff.samples).toEqual(planes)
  })
  test('grey becomes three equal planes', async () => {
    const grey = data.slice(0, COUNT)
    const fromPng = orThrow(await decodePng(png(grey, WIDTH, HEIGHT, 1), 'a.png'))
    expect(fromPng.samples).toEqual([grey, grey, grey])
    const fromTiff = orThrow(await decodeTiff(tiff(grey, WIDTH, HEIGHT, { channels: 1 }), 'a.tif'))
    expect(fromTiff.samples).toEqual([grey, grey, grey])
  })
})

const COLOURS = [
  [0, 0, 0],
  [250, 120, 3],
  [7, 200, 99],
] as const

test('a picture with a palette gets its colours', async () => {
  const indices = Uint8Array.from({ length: COUNT }, (_, i) => i % 3)
  const fromPng = orThrow(await decodePng(indexedPng(indices, WIDTH, HEIGHT, COLOURS), 'a.png'))
  const expected = [0, 1, 2].map((at) => Uint8Array.from(indices, (i) => COLOURS[i]?.[at] ?? -1))
  expect(fromPng.samples).toEqual(expected)
  const map = new Array<number>(3 * 256).fill(0)
  for (const [i, colour] of COLOURS.entries())
    for (const [at, value] of colour.entries()) map[at * 256 + i] = value * 257
  const fromTiff = orThrow(
    await decodeTiff(
      tiff(indices, WIDTH, HEIGHT, { channels: 1, photometric: 3, colours: map }),
      'a.tif',
    ),
  )
  expect(fromTiff.depth).toBe(16)
  expect(fromTiff.samples.map((plane) => Array.from(plane, (value) => value / 257))).toEqual(
    expected.map((plane) => Array.from(plane)),
  )
})

test('pictures that cannot be read as they are meant are refused', async () => {
  const data = drawn(0, WIDTH, HEIGHT, 8)
  const apart = await decodeTiff(tiff(data, WIDTH, HEIGHT, { planar: 2 }), 'apart.tif')
  expect(apart).toMatchObject({ ok: false, problems: [{ at: { file: 'apart.tif' } }] })
  const inks = new Uint8Array(COUNT * 4)
  const cmyk = await decodeTiff(
    tiff(inks, WIDTH, HEIGHT, { channels: 4, photometric: 5 }),
    'inks.tif',
  )
  expect(cmyk.ok).toBe(false)
})

test('pictures cut short or damaged are refused by name', async () => {
  const data = drawn(0, WIDTH, HEIGHT, 16)
  for (const [name, whole, decode] of [
    ['a.png', png(data, WIDTH, HEIGHT), decodePng],
    ['a.tif', tiff(data, WIDTH, HEIGHT), decodeTiff],
  ] as const)
    for (const part of [0.1, 0.4, 0.8]) {
      const read = await decode(whole.slice(0, Math.floor(whole.length * part)), name)
      expect(read.ok ? 'read' : read.problems[0].says).toContain(name)
    }
})
