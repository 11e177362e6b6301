import { VideoSample } from 'mediabunny'
import { expect, test } from 'vitest'
import { chromaHeight, chromaWidth, type Layout } from '../../../src/core/picture/planes.ts'
import { planesFromSample } from '../../../src/media/browser/planesFromSample.ts'

const WIDTH = 7
const HEIGHT = 5

/** Planes of a picture in which no two neighbouring samples are alike. */
const drawnPlanes = (layout: Layout, depth: number) => {
  const top = 2 ** depth
  return [0, 1, 2].map((plane) => {
    const count =
      plane === 0 ? WIDTH * HEIGHT : chromaWidth(layout, WIDTH) * chromaHeight(layout, HEIGHT)
    return Array.from({ length: count }, (_, i) => (37 * (i + 1) + 61 * plane) % top)
  })
}

const read = async (
  format: string,
  samples: readonly number[],
  depth = 8,
  more: Partial<VideoFrameBufferInit> = {},
  isRgb = false,
) => {
  const data = depth > 8 ? Uint16Array.from(samples) : Uint8Array.from(samples)
  const picture = new VideoFrame(data, {
    format: format as VideoPixelFormat,
    codedWidth: WIDTH,
    codedHeight: HEIGHT,
    timestamp: 0,
    ...more,
  })
  const sample = new VideoSample(picture)
  const planes = await planesFromSample(sample, isRgb)
  sample.close()
  if (!planes) throw new Error(`${format} was not read`)
  return { ...planes, samples: planes.samples.map((plane) => [...plane]) }
}

test.each([
  ['I420', '420', 8],
  ['I422', '422', 8],
  ['I444', '444', 8],
  ['I420P10', '420', 10],
  ['I422P10', '422', 10],
  ['I444P10', '444', 10],
  ['I420P12', '420', 12],
] as const)('%s keeps its planes, odd sizes too', async (format, layout, depth) => {
  const samples = drawnPlanes(layout, depth)
  const expected = { width: WIDTH, height: HEIGHT, layout, depth, samples }
  expect(await read(format, samples.flat(), depth)).toEqual(expected)
})

test('alpha is left out', async () => {
  const samples = drawnPlanes('420', 8)
  const alpha = Array.from({ length: WIDTH * HEIGHT }, (_, i) => i)
  expect((await read('I420A', [...samples.flat(), ...alpha])).samples).toEqual(samples)
})

test('NV12 has its chroma taken apart', async () => {
  const [y = [], cb = [], cr = []] = drawnPlanes('420', 8)
  const both = cb.flatMap((value, i) => [value, cr[i] ?? 0])
  expect(await read('NV12', [...y, ...both])).toMatchObject({ layout: '420', samples: [y, cb, cr] })
})

test.each(['RGBA', 'RGBX', 'BGRA', 'BGRX'])('%s becomes R′, G′ and B′', async (format) => {
  const [r = [], g = [], b = []] = drawnPlanes('444', 8)
  const packed = r.flatMap((value, i) => {
    const three = [value, g[i] ?? 0, b[i] ?? 0]
    return [...(format.startsWith('RGB') ? three : three.reverse()), 255]
  })
  expect(await read(format, packed)).toMatchObject({ layout: 'rgb', samples: [r, g, b] })
})

test('three planes stated to be R′G′B′ are put in that order', async () => {
  const [g = [], b = [], r = []] = drawnPlanes('444', 8)
  expect(await read('I444', [g, b, r].flat(), 8, {}, true)).toMatchObject({
    layout: 'rgb',
    samples: [r, g, b],
  })
})

test('only the visible part of a coded picture is taken', async () => {
  const [y = [], cb = [], cr = []] = drawnPlanes('444', 8)
  const visible = (plane: readonly number[]) =>
    plane.filter((_, i) => i % WIDTH >= 2 && i % WIDTH < 5 && i >= WIDTH && i < 3 * WIDTH)
  const planes = await read('I444', [y, cb, cr].flat(), 8, {
    visibleRect: { x: 2, y: 1, width: 3, height: 2 },
  })
  expect(planes).toMatchObject({ width: 3, height: 2 })
  expect(planes.samples).toEqual([visible(y), visible(cb), visible(cr)])
})
