import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { IDENTITY_GRADE } from '../../../src/core/colour/grade.ts'
import { deliverPicture } from '../../../src/core/picture/deliverPicture.ts'
import { framePicture } from '../../../src/core/picture/framePicture.ts'
import {
  type Framing,
  framingMap,
  IDENTITY_FRAMING,
  mixFraming,
} from '../../../src/core/picture/framing.ts'
import { type RgbPicture, rgbPicture } from '../../../src/core/picture/rgbPicture.ts'
import { seenPlaces } from '../../../src/core/picture/seenPlaces.ts'

const WIDTH = 16
const HEIGHT = 8

const picture = (at: (x: number, y: number) => number): RgbPicture => {
  const made = rgbPicture(WIDTH, HEIGHT)
  for (const [c, plane] of [made.r, made.g, made.b].entries())
    for (let i = 0; i < plane.length; i++) plane[i] = at(i % WIDTH, Math.floor(i / WIDTH)) + c
  return made
}

const framed = (framing: Partial<Framing>, at: (x: number, y: number) => number) =>
  framePicture(picture(at), { ...IDENTITY_FRAMING, ...framing })

const pixel = ({ r }: RgbPicture, x: number, y: number): number => r[y * WIDTH + x] ?? Number.NaN

/** Each pixel tells its own place. */
const place = (x: number, y: number): number => 100 * y + x + 1

/** Whether the four by four pixels about a place are all on the scan. */
const isInner = (sx: number, sy: number): boolean =>
  sx >= 1 && sx <= WIDTH - 2 && sy >= 1 && sy <= HEIGHT - 2

describe('framing', () => {
  it('at rest leaves the picture as it is', () => {
    const scanned = picture(place)
    expect(framePicture(scanned, IDENTITY_FRAMING)).toBe(scanned)
  })

  it('pan moves the view right by parts of the width: the picture goes left, black comes in', () => {
    const out = framed({ pan: 3 / WIDTH }, place)
    for (let x = 0; x < WIDTH; x++)
      expect(pixel(out, x, 2)).toBeCloseTo(x < WIDTH - 3 ? place(x + 3, 2) : 0, 12)
  })

  it('tilt moves the view down by parts of the height: the picture goes up', () => {
    const out = framed({ tilt: 2 / HEIGHT }, place)
    for (let y = 0; y < HEIGHT; y++)
      expect(pixel(out, 4, y)).toBeCloseTo(y < HEIGHT - 2 ? place(4, y + 2) : 0, 12)
  })

  it('zoom 2 shows the middle half: the first pixel is a quarter in, between pixels', () => {
    const out = framed({ zoom: 2 }, (x) => x)
    expect(pixel(out, 0, 0)).toBeCloseTo(3.75, 12)
    expect(pixel(out, WIDTH - 1, 0)).toBeCloseTo(11.25, 12)
  })

  it('zoom 0.5 shows all of the scan in the middle, black around it', () => {
    const out = framed({ zoom: 0.5 }, () => 1)
    for (let y = 0; y < HEIGHT; y++)
      for (let x = 0; x < WIDTH; x++) {
        const isScan = x >= 4 && x < 12 && y >= 2 && y < 6
        expect(pixel(out, x, y)).toBe(isScan ? 1 : 0)
      }
  })

  it('a slope stays the slope its framing makes of it, but near the repeated edges', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 4, noNaN: true }),
        fc.double({ min: -0.4, max: 0.4, noNaN: true }),
        fc.double({ min: -0.4, max: 0.4, noNaN: true }),
        (zoom, pan, tilt) => {
          const out = framed({ zoom, pan, tilt }, (x, y) => 10 + 3 * x - 2 * y)
          for (let y = 0; y < HEIGHT; y++)
            for (let x = 0; x < WIDTH; x++) {
              // From the middle of the view: (delivered − middle)/zoom, the pan in delivered widths.
              const sx = WIDTH / 2 + (x + 0.5 - WIDTH / 2) / zoom + (pan * WIDTH) / zoom - 0.5
              const sy = HEIGHT / 2 + (y + 0.5 - HEIGHT / 2) / zoom + (tilt * HEIGHT) / zoom - 0.5
              const isInside = isInner(sx, sy)
              const isOutside = sx < -0.51 || sx > WIDTH - 0.49 || sy < -0.51 || sy > HEIGHT - 0.49
              if (isInside) expect(pixel(out, x, y)).toBeCloseTo(10 + 3 * sx - 2 * sy, 9)
              if (isOutside) expect(pixel(out, x, y)).toBe(0)
            }
        },
      ),
      { seed: 1, numRuns: 100 },
    )
  })

  it('a quarter turn clockwise brings the left side to the top', () => {
    const square = rgbPicture(4, 4)
    square.r.forEach((_, i) => {
      square.r[i] = 10 * Math.floor(i / 4) + (i % 4) + 1
    })
    const { r } = framePicture(square, { ...IDENTITY_FRAMING, rotation: 90 })
    const rows = [0, 1, 2, 3].map((y) => [...r.slice(4 * y, 4 * y + 4)].map(Math.round))
    // Columns of the scan, from the last row up, one after another downwards.
    expect(rows).toEqual([
      [31, 21, 11, 1],
      [32, 22, 12, 2],
      [33, 23, 13, 3],
      [34, 24, 14, 4],
    ])
  })

  it('a turn keeps shapes as they are shown where pixels are wide', () => {
    const map = framingMap({ ...IDENTITY_FRAMING, rotation: 30 }, 100, 80, 1.5)
    // Two delivered steps at right angles and of one length, as shown: so are they on the scan.
    const [x, y] = [
      [map.xx, map.yx],
      [map.xy * 1.5, map.yy * 1.5],
    ] as const
    const shown = ([dx, dy]: readonly [number, number]) => [dx * 1.5, dy] as const
    const [a, b] = [shown(x), shown(y)]
    expect(a[0] * b[0] + a[1] * b[1]).toBeCloseTo(0, 12)
    expect(Math.hypot(...a)).toBeCloseTo(Math.hypot(...b), 12)
    expect(Math.hypot(...a)).toBeCloseTo(1.5, 12)
  })

  it('squeeze 2 shows the middle half of the width, all of the height', () => {
    const out = framed({ squeeze: 2 }, place)
    expect(pixel(out, 0, 3)).toBeCloseTo(place(3.75, 3), 9)
    expect(pixel(out, WIDTH - 1, 3)).toBeCloseTo(place(11.25, 3), 9)
  })

  it('blanking makes the same of the picture black above and below, or at both sides', () => {
    const inside = (blanking: number) =>
      framed({ blanking }, () => 1).r.reduce((sum, level) => sum + level, 0)
    expect(inside(0.5)).toBe(WIDTH * HEIGHT * 0.5)
    expect(inside(-0.25)).toBe(WIDTH * HEIGHT * 0.75)
    const letter = framed({ blanking: 0.5 }, () => 1)
    expect([0, 1, 2, 5, 6, 7].map((y) => pixel(letter, 3, y))).toEqual([0, 0, 1, 1, 0, 0])
    const pillar = framed({ blanking: -0.25 }, () => 1)
    expect([1, 2, 13, 14].map((x) => pixel(pillar, x, 3))).toEqual([0, 1, 1, 0])
  })

  it('1.33 left of a picture of 16:9 is a quarter of the width blanked', () => {
    const { open } = framingMap({ ...IDENTITY_FRAMING, blanking: -0.25 }, 1920, 1080)
    expect((open.right - open.left) / (open.bottom - open.top)).toBeCloseTo(4 / 3, 9)
  })

  it('a turned slope stays the slope it is turned to', () => {
    const out = framed({ rotation: 20, zoom: 1.7 }, (x, y) => 10 + 3 * x - 2 * y)
    const angle = (20 * Math.PI) / 180
    const [cos, sin] = [Math.cos(angle), Math.sin(angle)]
    for (let y = 0; y < HEIGHT; y++)
      for (let x = 0; x < WIDTH; x++) {
        const [dx, dy] = [(x - 7.5) / 1.7, (y - 3.5) / 1.7]
        const [sx, sy] = [7.5 + cos * dx + sin * dy, 3.5 - sin * dx + cos * dy]
        if (isInner(sx, sy)) expect(pixel(out, x, y)).toBeCloseTo(10 + 3 * sx - 2 * sy, 9)
      }
  })

  it('a parabola stays a parabola, as Keys claims of a = −1/2, however it is zoomed and turned', () => {
    const level = (x: number, y: number) => 0.3 * x * x - 0.2 * y * y + 0.1 * x * y + x - 2 * y
    for (const [zoom, rotation] of [
      [1.7, 0],
      [1, 20],
      [2.3, -50],
    ] as const) {
      const framing = { ...IDENTITY_FRAMING, zoom, rotation, pan: 0.03 }
      const out = framed(framing, level)
      let count = 0
      seenPlaces(framingMap(framing, WIDTH, HEIGHT), WIDTH, HEIGHT, (i, sx, sy) => {
        if (!isInner(sx, sy)) return
        expect(out.r[i]).toBeCloseTo(level(sx, sy), 9)
        count++
      })
      expect(count).toBeGreaterThan(25)
    }
  })

  it('one level stays that level, whatever the framing, and black where nothing is shown', () => {
    fc.assert(
      fc.property(
        fc.record({
          zoom: fc.double({ min: 0.25, max: 8, noNaN: true }),
          pan: fc.double({ min: -1, max: 1, noNaN: true }),
          tilt: fc.double({ min: -1, max: 1, noNaN: true }),
          rotation: fc.oneof(fc.constant(0), fc.double({ min: -180, max: 180, noNaN: true })),
          squeeze: fc.double({ min: 0.25, max: 4, noNaN: true }),
          blanking: fc.double({ min: -0.95, max: 0.95, noNaN: true }),
        }),
        fc.double({ min: -2, max: 2, noNaN: true }),
        (framing, level) => {
          const seen = new Set<number>()
          const map = framingMap(framing, WIDTH, HEIGHT)
          seenPlaces(map, WIDTH, HEIGHT, (i) => seen.add(i))
          const { r } = framed(framing, () => level)
          for (const [i, shown] of r.entries())
            expect(Math.abs(shown - (seen.has(i) ? level : 0))).toBeLessThan(1e-14)
        },
      ),
      { seed: 3, numRuns: 300 },
    )
  })

  it('goes past a hard edge by 2/27 of the step at most', () => {
    const most = Math.max(
      ...Array.from({ length: 300 }, (_, i) => {
        const { r } = framed({ pan: i / 300 / WIDTH }, (x) => (x < 8 ? 0 : 1))
        return Math.max(...r) - 1
      }),
    )
    expect(most).toBeCloseTo(2 / 27, 6)
  })

  it('treats the three channels alike', () => {
    const out = framed({ zoom: 1.3, pan: 0.05 }, place)
    for (let i = 0; i < out.r.length; i++) {
      expect((out.g[i] ?? 0) - (out.r[i] ?? 0)).toBeCloseTo(1, 9)
      expect((out.b[i] ?? 0) - (out.r[i] ?? 0)).toBeCloseTo(2, 9)
    }
  })

  it('half-way between two framings is half of each number', () => {
    const a = { zoom: 1, pan: 0, tilt: -0.2, rotation: -2, squeeze: 1, blanking: 0 }
    const b = { zoom: 2, pan: 0.1, tilt: 0.2, rotation: 4, squeeze: 2, blanking: 0.5 }
    const half = { zoom: 1.5, pan: 0.05, tilt: 0, rotation: 1, squeeze: 1.5, blanking: 0.25 }
    expect(mixFraming(a, b, 0.5)).toEqual(half)
  })
})

describe('the delivered picture', () => {
  it('is graded before it is framed: lift leaves the surround of a small picture black', () => {
    const grey = new Uint8Array(WIDTH * HEIGHT).fill(128)
    const planes = {
      width: WIDTH,
      height: HEIGHT,
      layout: '444',
      depth: 8,
      samples: [grey.slice().fill(16), grey, grey],
    } as const
    const grade = { ...IDENTITY_GRADE, lift: [0.1, 0.2, 0.3] } as const
    const coding = { matrix: 'bt709', range: 'narrow' } as const
    const out = deliverPicture(planes, coding, grade, { ...IDENTITY_FRAMING, zoom: 0.5 })
    const middle = 4 * WIDTH + 8
    expect([out.r[middle], out.g[middle], out.b[middle]].map((v) => v?.toFixed(9))).toEqual([
      '0.100000000',
      '0.200000000',
      '0.300000000',
    ])
    expect([out.r[0], out.g[0], out.b[0]]).toEqual([0, 0, 0])
  })
})
