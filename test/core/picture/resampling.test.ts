import { describe, expect, it } from 'vitest'
import { framePicture } from '../../../src/core/picture/framePicture.ts'
import { framePictureLinear } from '../../../src/core/picture/framePictureLinear.ts'
import { type Framing, framingMap, IDENTITY_FRAMING } from '../../../src/core/picture/framing.ts'
import { type RgbPicture, rgbPicture } from '../../../src/core/picture/rgbPicture.ts'
import { seenPlaces } from '../../../src/core/picture/seenPlaces.ts'

const WIDTH = 240
const HEIGHT = 180
/** Where the zone plate has a half turn a pixel, in pixels from its middle: its Nyquist limit. */
const RADIUS = 110

const radiusAt = (x: number, y: number): number =>
  Math.hypot(x - (WIDTH - 1) / 2, y - (HEIGHT - 1) / 2)

/** cos(π·r²/(2·R)): r/(2·R) turns a pixel at the distance r. */
const zonePlate = (x: number, y: number): number =>
  Math.cos((Math.PI * radiusAt(x, y) ** 2) / (2 * RADIUS))

const pictureOf = (level: (x: number, y: number) => number): RgbPicture => {
  const picture = rgbPicture(WIDTH, HEIGHT)
  for (const plane of [picture.r, picture.g, picture.b])
    for (let i = 0; i < plane.length; i++) plane[i] = level(i % WIDTH, Math.floor(i / WIDTH))
  return picture
}

const PLATE = pictureOf(zonePlate)

type Error = { readonly most: number; readonly rms: number }

/**
 * How far a framed picture is from `wanted` at the mapped places, over delivered pixels read from
 * well inside the scan, where the plate has from `low` to `high` of its Nyquist limit.
 */
const errorOf = (
  frame: typeof framePicture,
  framing: Framing,
  [low, high]: readonly [number, number],
  wanted: (x: number, y: number) => number,
): Error => {
  const { r } = frame(PLATE, framing)
  let [most, squares, count] = [0, 0, 0]
  seenPlaces(framingMap(framing, WIDTH, HEIGHT), WIDTH, HEIGHT, (pixel, x, y) => {
    const part = radiusAt(x, y) / RADIUS
    if (part < low || part > high || x < 12 || x > WIDTH - 13 || y < 12 || y > HEIGHT - 13) return
    const error = Math.abs((r[pixel] as number) - wanted(x, y))
    most = Math.max(most, error)
    squares += error ** 2
    count++
  })
  expect(count).toBeGreaterThan(100)
  return { most, rms: Math.sqrt(squares / count) }
}

const framed = (change: Partial<Framing>): Framing => ({ ...IDENTITY_FRAMING, ...change })

/** Framings that make nothing smaller: the plate stays below what either raster can hold. */
const CASES = [
  ['zoomed 2 ×', framed({ zoom: 2 })],
  ['zoomed 1.37 ×', framed({ zoom: 1.37 })],
  ['panned and tilted by parts of a pixel', framed({ pan: 3.4 / WIDTH, tilt: -2.7 / HEIGHT })],
  ['turned by 7.3°', framed({ rotation: 7.3 })],
  ['turned, zoomed and panned', framed({ rotation: -31, zoom: 1.21, pan: 0.03 })],
  ['squeezed 2 ×', framed({ squeeze: 2 })],
] as const

/**
 * For parts of the plate up to 1/4, 1/2 and 0.8 of its Nyquist limit: the greatest error and the RMS
 * error there may be (the plate is ±1), and how many times less than that of linear interpolation
 * the RMS error is at least. What a cubic of four samples does to a wave half way between two: at
 * 0.4 turns a pixel it keeps 45 % of it (linear: 31 %), at 1/4 88 % (71 %), at 1/8 99 % (92 %).
 */
const BANDS = [
  [0.25, 0.01, 0.003, 8],
  [0.5, 0.11, 0.03, 3],
  [0.8, 0.55, 0.135, 1.85],
] as const

describe('a zone plate, framed, against its formula at the mapped places', () => {
  it.each(CASES)('%s', (_, framing) => {
    for (const [high, most, rms, times] of BANDS) {
      const cubic = errorOf(framePicture, framing, [0, high], zonePlate)
      const linear = errorOf(framePictureLinear, framing, [0, high], zonePlate)
      expect(cubic.most).toBeLessThan(most)
      expect(cubic.rms).toBeLessThan(rms)
      expect(cubic.most).toBeLessThan(linear.most)
      expect(linear.rms / cubic.rms).toBeGreaterThan(times)
    }
  })

  it('at rest and panned by whole pixels is the scan itself', () => {
    const { r } = framePicture(PLATE, framed({ pan: 16 / WIDTH, tilt: -9 / HEIGHT }))
    for (let y = 9; y < HEIGHT; y++)
      for (let x = 0; x < WIDTH - 16; x++)
        expect(r[y * WIDTH + x]).toBeCloseTo(zonePlate(x + 16, y - 9), 10)
    expect(framePicture(PLATE, IDENTITY_FRAMING)).toBe(PLATE)
  })
})

describe('a zone plate made smaller', () => {
  // Parts of the energy of waves that the smaller raster cannot hold, from 1.4 of its limit on.
  it.each([
    ['to 0.5', framed({ zoom: 0.5 }), 0.5, 0.01, 0.1],
    ['to 0.37', framed({ zoom: 0.37 }), 0.37, 0.005, 0.4],
    ['to 0.5 and turned', framed({ zoom: 0.5, rotation: 7.3 }), 0.5, 0.01, 0.3],
  ] as const)('%s does not alias, as it would linearly', (_, framing, limit, kept, linearKeeps) => {
    const energy = (frame: typeof framePicture) =>
      2 * errorOf(frame, framing, [1.4 * limit, 0.98], () => 0).rms ** 2
    expect(energy(framePicture)).toBeLessThan(kept)
    expect(energy(framePictureLinear)).toBeGreaterThan(linearKeeps)
  })

  it('keeps what its raster holds well', () => {
    const { rms } = errorOf(framePicture, framed({ zoom: 0.5 }), [0, 0.125], zonePlate)
    expect(rms).toBeLessThan(0.03)
  })

  it('squeezed to half its width takes out only what is too fine across', () => {
    const waves = (frame: typeof framePicture, isAcross: boolean) => {
      const picture = pictureOf((x, y) => Math.cos(0.8 * Math.PI * (isAcross ? x : y)))
      const { r } = frame(picture, framed({ squeeze: 0.5 }))
      // Past the middle half of the width is black, and at its ends edges are repeated.
      const rows = Array.from({ length: 10 }, (_, y) => (90 + y) * WIDTH)
      return Math.max(...rows.flatMap((at) => [...r.subarray(at + 70, at + 170)].map(Math.abs)))
    }
    expect(waves(framePicture, true)).toBeLessThan(0.1)
    expect(waves(framePictureLinear, true)).toBeGreaterThan(0.3)
    expect(waves(framePicture, false)).toBeGreaterThan(0.99)
  })
})
