import { decode } from 'fast-png'
import { afterAll, describe, expect, it } from 'vitest'
import type { Grade } from '../../../src/core/colour/grade.ts'
import { IDENTITY_GRADE } from '../../../src/core/colour/grade.ts'
import { type FilmBase, PRINT_BASE } from '../../../src/core/film/filmBase.ts'
import { type Framing, IDENTITY_FRAMING } from '../../../src/core/picture/framing.ts'
import {
  type Coding,
  chromaHeight,
  chromaWidth,
  type Layout,
  type MatrixName,
  type Planes,
  type Samples,
} from '../../../src/core/picture/planes.ts'
import { frame } from '../../../src/core/time/frame.ts'
import { levelLimits } from '../../../src/core/tolerance/levelLimits.ts'
import { EBU_R103_V3 } from '../../../src/core/tolerance/profile.ts'
import { openVideoFile } from '../../../src/media/browser/openVideoFile.ts'
import { createPreview, type Preview } from '../../../src/render/createPreview.ts'
import type { PreviewView, Side } from '../../../src/render/previewView.ts'
import { MADE_LISTS } from '../../support/madeLists.ts'
import { previewPicture } from '../../support/previewPicture.ts'
import { seeded } from '../../support/seeded.ts'
import barVectors from '../../vectors/bars.json' with { type: 'json' }
import { fetchClip } from '../media/fetchClip.ts'

const WIDTH = 61
const HEIGHT = 39

/** One 10-bit code as signal. */
const CODE = 1 / 876

const planesOf = (layout: Layout, depth: number, at: (p: number, i: number) => number): Planes => {
  const columns = chromaWidth(layout, WIDTH)
  const rows = chromaHeight(layout, HEIGHT)
  const counts = [WIDTH * HEIGHT, columns * rows, columns * rows]
  const plane = (p: 0 | 1 | 2): Samples => {
    const out =
      depth > 8 ? new Uint16Array(counts[p] as number) : new Uint8Array(counts[p] as number)
    for (let i = 0; i < out.length; i++) out[i] = at(p, i)
    return out
  }
  return { width: WIDTH, height: HEIGHT, layout, depth, samples: [plane(0), plane(1), plane(2)] }
}

const noise = (layout: Layout, depth: number, seed: number): Planes => {
  const random = seeded(seed)
  return planesOf(layout, depth, () => Math.floor(random() * 2 ** depth))
}

const GRADES: readonly Grade[] = [
  IDENTITY_GRADE,
  { lift: [0.02, -0.03, 0.05], gamma: [1.3, 0.8, 1], gain: [1.1, 0.9, 1.2], saturation: 1.2 },
  { lift: [-0.1, -0.1, -0.1], gamma: [2.2, 2.2, 2.2], gain: [1, 1.05, 0.95], saturation: 0 },
]

const FRAMINGS: readonly Framing[] = [
  IDENTITY_FRAMING,
  { ...IDENTITY_FRAMING, zoom: 1.37, pan: 0.05, tilt: -0.08 },
  { ...IDENTITY_FRAMING, zoom: 0.83, pan: -0.1, tilt: 0.2, blanking: 0.2 },
  { zoom: 1.1, pan: 0.03, tilt: 0.05, rotation: 7.3, squeeze: 1.25, blanking: -0.15 },
]

const DYES: FilmBase['dyes'] = [
  [1.5, -0.15, 0.05],
  [-0.1, 1.2, -0.1],
  [0.02, -0.2, 1.3],
]

const NEGATIVE: FilmBase = {
  ...PRINT_BASE,
  scan: 'negative',
  clear: [0.25, 0.6, 0.85],
  gamma: [0.55, 0.6, 0.65],
}

const BASES: readonly (readonly [string, FilmBase])[] = [
  ['a print with its dyes restored', { ...PRINT_BASE, dyes: DYES }],
  ['printing density', { ...PRINT_BASE, scan: 'printing-density' }],
  ['printing density with dyes restored', { ...PRINT_BASE, scan: 'printing-density', dyes: DYES }],
  ['a negative', NEGATIVE],
  ['a negative with dyes restored', { ...NEGATIVE, dyes: DYES }],
]

/** Ramps from the lowest code to the highest: grey, then green alone, then blue alone. */
const ramps = (depth: number): Planes =>
  planesOf('rgb', depth, (p, i) => {
    const code = Math.round(((i % (WIDTH * 13)) / (WIDTH * 13 - 1)) * (2 ** depth - 1))
    const strip = Math.floor(i / (WIDTH * 13))
    return strip === 0 || strip === p ? code : 2 ** (depth - 1)
  })

const bars = (matrix: MatrixName, amplitude: number): Planes => {
  const rows = barVectors.rows.filter(
    (row) => row.matrix === matrix && row.amplitude === amplitude && row.code10,
  )
  return planesOf('444', 10, (p, i) => rows[(i % WIDTH) % rows.length]?.code10[p] ?? 0)
}

const preview = (): Preview => {
  const made = createPreview(new OffscreenCanvas(WIDTH, HEIGHT))
  if (!made.ok) throw new Error(made.problems[0].says)
  return made.value
}

const photograph = async (): Promise<Planes> => {
  const file = await fetchClip('stills/astronaut-128.png')
  const { width, height, channels, data } = decode(await file.arrayBuffer())
  const plane = (p: number) =>
    Uint8Array.from({ length: width * height }, (_, i) => data[i * channels + p] ?? 0)
  return { width, height, layout: 'rgb', depth: 8, samples: [plane(0), plane(1), plane(2)] }
}

const viewOf = (grade: Grade, framing: Framing): PreviewView => ({
  grade,
  framing,
  compare: { kind: 'none' },
  excursions: null,
  isMoving: false,
})

/** The scan of a frame beside the graded picture. */
const scanOf = (planes: Planes, coding: Coding): Side => ({
  planes,
  coding,
  grade: IDENTITY_GRADE,
  framing: IDENTITY_FRAMING,
  isMarked: false,
})

/** One for all comparisons: a picture is read at its own size, whatever the canvas has. */
const compared = preview()

/** The largest difference from the reference, in 10-bit codes, where the reference is in reach. */
const worst = (planes: Planes, coding: Coding, grade: Grade, framing: Framing): number => {
  compared.setPlanes(planes, coding)
  const pixels = compared.readDelivered(viewOf(grade, framing))
  const reference = previewPicture(planes, coding, grade, framing)
  let most = 0
  expect(pixels).toHaveLength(reference.r.length * 4)
  for (let i = 0; i < reference.r.length; i++)
    for (const [c, plane] of [reference.r, reference.g, reference.b].entries()) {
      const difference = Math.abs((pixels[i * 4 + c] as number) - (plane[i] as number))
      most = Math.max(most, difference / CODE / Math.max(1, Math.abs(plane[i] as number)))
    }
  return most
}

afterAll(() => compared.dispose())

describe('the preview against the float64 reference', () => {
  const layouts: readonly Layout[] = ['420', '422', '444', 'rgb']
  const cases = layouts.flatMap((layout) => [8, 10, 16].map((depth) => ({ layout, depth })))

  it.each(cases)('$layout of $depth bits is within one 10-bit code', ({ layout, depth }) => {
    for (const range of ['narrow', 'full'] as const)
      for (const matrix of ['bt601', 'bt709', 'bt2020'] as const)
        for (const grade of GRADES) {
          const planes = noise(layout, depth, depth + grade.saturation)
          expect(worst(planes, { matrix, range }, grade, IDENTITY_FRAMING)).toBeLessThan(1)
        }
  })

  it('frames as the reference does, leaving black outside the scan', () => {
    for (const framing of FRAMINGS)
      for (const grade of GRADES)
        expect(
          worst(noise('420', 8, 3), { matrix: 'bt709', range: 'narrow' }, grade, framing),
        ).toBeLessThan(1)
  })

  it('keeps a ramp of every 8-bit code, below black and above peak as well', () => {
    const ramp = planesOf('444', 8, (p, i) => (p === 0 ? i % 256 : 128))
    expect(
      worst(ramp, { matrix: 'bt709', range: 'narrow' }, IDENTITY_GRADE, IDENTITY_FRAMING),
    ).toBeLessThan(0.01)
  })

  it.each(['bt601', 'bt709'] as const)('keeps colour bars by %s', (matrix) => {
    for (const amplitude of [0.75, 1])
      for (const grade of GRADES)
        expect(
          worst(bars(matrix, amplitude), { matrix, range: 'narrow' }, grade, IDENTITY_FRAMING),
        ).toBeLessThan(0.05)
  })

  it('keeps a frame of a real clip and a photograph, whatever the base', async () => {
    const opened = await openVideoFile(await fetchClip('video/street-dip-to-white-360p.mp4'))
    if (!opened.ok) throw new Error(opened.problems[0].says)
    const clip = await opened.value.read(frame(60))
    opened.value.close()
    for (const planes of [clip, await photograph()])
      for (const base of [PRINT_BASE, ...BASES.map(([, other]) => other)]) {
        const coding = { matrix: 'bt709', range: 'narrow', base } as const
        for (const grade of GRADES)
          expect(worst(planes, coding, grade, IDENTITY_FRAMING)).toBeLessThan(1)
      }
  })

  it.each(BASES)('makes video of %s as the reference does', (_, base) => {
    for (const range of ['full', 'narrow'] as const) {
      const pictures = [noise('420', 8, 5), noise('444', 10, 6), noise('rgb', 16, 7), ramps(10)]
      for (const planes of pictures)
        for (const grade of GRADES)
          expect(
            worst(planes, { matrix: 'bt709', range, base }, grade, IDENTITY_FRAMING),
          ).toBeLessThan(1)
    }
  })

  it.each(Object.entries(MADE_LISTS))('takes %s in the base as the reference does', (_, list) => {
    const bases = [
      { ...PRINT_BASE, list },
      { ...NEGATIVE, dyes: DYES, list },
    ]
    const pictures = [noise('420', 8, 5), noise('rgb', 16, 7), ramps(10)]
    for (const base of bases)
      for (const planes of pictures)
        for (const grade of GRADES)
          expect(
            worst(planes, { matrix: 'bt709', range: 'full', base }, grade, IDENTITY_FRAMING),
          ).toBeLessThan(1)
  })

  it('draws anew when only a number of the list changes, and as before without it', () => {
    const planes = noise('rgb', 10, 8)
    const listed = (offset: number) => ({
      matrix: 'bt709' as const,
      range: 'full' as const,
      base: {
        ...PRINT_BASE,
        list: {
          name: 'lift',
          steps: [
            { kind: 'range' as const, low: [0, offset], high: [1, 1], clamps: true } as const,
          ],
        },
      },
    })
    for (const offset of [0.1, 0.2, 0.1])
      expect(worst(planes, listed(offset), IDENTITY_GRADE, IDENTITY_FRAMING)).toBeLessThan(0.01)
    const plain = { matrix: 'bt709', range: 'full', base: PRINT_BASE } as const
    expect(worst(planes, plain, IDENTITY_GRADE, IDENTITY_FRAMING)).toBeLessThan(0.01)
  })

  it('draws anew when only the base changes, and shows it left of the wipe as well', () => {
    const drawn = preview()
    const flat = planesOf('444', 8, (p) => (p === 0 ? 126 : 128))
    const half: Grade = { ...IDENTITY_GRADE, gain: [0.5, 0.5, 0.5] }
    const row = 20 * WIDTH
    const shown = [PRINT_BASE, { ...PRINT_BASE, dyes: DYES }].map((base) => {
      const coding = { matrix: 'bt709', range: 'narrow', base } as const
      drawn.setPlanes(flat, coding)
      const pixels = drawn.readDelivered({
        ...viewOf(half, IDENTITY_FRAMING),
        compare: { kind: 'wipe', at: 0.5, other: scanOf(flat, coding) },
      })
      return [pixels[(row + 10) * 4], pixels[(row + 50) * 4]]
    })
    const restored = (110 / 219) ** (1.5 - 0.15 + 0.05)
    expect(shown[0]?.[0]).toBeCloseTo(110 / 219, 4)
    expect(shown[1]?.[0]).toBeCloseTo(restored, 4)
    expect(shown[1]?.[1]).toBeCloseTo(restored / 2, 4)
    drawn.dispose()
  })

  it('shows the scan without the grade left of the wipe, and the graded picture right of it', () => {
    const drawn = preview()
    const flat = planesOf('444', 8, (p) => (p === 0 ? 126 : 128))
    const coding = { matrix: 'bt709', range: 'narrow' } as const
    drawn.setPlanes(flat, coding)
    const half: Grade = { ...IDENTITY_GRADE, gain: [0.5, 0.5, 0.5] }
    const pixels = drawn.readDelivered({
      ...viewOf(half, IDENTITY_FRAMING),
      compare: { kind: 'wipe', at: 0.5, other: scanOf(flat, coding) },
    })
    const row = 20 * WIDTH
    expect(pixels[(row + 10) * 4]).toBeCloseTo(110 / 219, 4)
    expect(pixels[(row + 50) * 4]).toBeCloseTo(55 / 219, 4)
    drawn.dispose()
  })

  it('hatches what is above in one direction and what is below in the other', () => {
    const drawn = preview()
    const levels = planesOf('444', 8, (p, i) =>
      p > 0 ? 128 : i % WIDTH < 20 ? 1 : i % WIDTH < 40 ? 126 : 254,
    )
    drawn.setPlanes(levels, { matrix: 'bt709', range: 'narrow' })
    const limits = { ...levelLimits(EBU_R103_V3), matrix: 'bt709' } as const
    const pixels = drawn.readDelivered({
      ...viewOf(IDENTITY_GRADE, IDENTITY_FRAMING),
      excursions: limits,
    })
    const at = (x: number, y: number) => pixels[(y * WIDTH + x) * 4] as number
    const isHatched = (x: number) =>
      new Set(Array.from({ length: 6 }, (_, y) => at(x, 10 + y).toFixed(2))).size === 2
    expect(isHatched(10)).toBe(true)
    expect(isHatched(30)).toBe(false)
    expect(isHatched(50)).toBe(true)
    expect(at(50, 10)).toBe(at(49, 11))
    expect(at(10, 10)).toBe(at(11, 11))
    drawn.dispose()
  })

  it('hatches the peaks of a composite signal where those alone are limited', () => {
    const drawn = preview()
    // Columns of yellow, grey and blue: the first peaks above peak white, the last below black.
    const colours = [
      [255, 255, 0],
      [128, 128, 128],
      [0, 0, 255],
    ] as const
    const bars = planesOf('rgb', 8, (p, i) => {
      const bar = colours[i % WIDTH < 20 ? 0 : i % WIDTH < 40 ? 1 : 2]
      return bar?.[p as 0 | 1 | 2] ?? 0
    })
    drawn.setPlanes(bars, { matrix: 'bt709', range: 'full' })
    const hatched = (composite: readonly [number, number] | null) => {
      const profile = { ...EBU_R103_V3, rgb: null, composite }
      const pixels = drawn.readDelivered({
        ...viewOf(IDENTITY_GRADE, IDENTITY_FRAMING),
        excursions: { ...levelLimits(profile), matrix: 'bt709' },
      })
      const at = (x: number, y: number, c: number) => pixels[(y * WIDTH + x) * 4 + c] as number
      return [10, 30, 50].map(
        (x) =>
          new Set(
            Array.from({ length: 6 }, (_, y) => [0, 1, 2].map((c) => at(x, 10 + y, c)).join()),
          ).size,
      )
    }
    expect(hatched(null)).toEqual([1, 1, 1])
    expect(hatched([-1, 1.3])).toEqual([2, 1, 1])
    expect(hatched([-0.3, 2])).toEqual([1, 1, 2])
    expect(hatched([-0.34, 1.34])).toEqual([1, 1, 1])
    drawn.dispose()
  })

  it('draws the upright picture on its canvas, clipped to what a screen shows', () => {
    const canvas = new OffscreenCanvas(WIDTH, HEIGHT)
    const made = createPreview(canvas)
    if (!made.ok) throw new Error(made.problems[0].says)
    const planes = planesOf('444', 8, (p, i) => (p > 0 ? 128 : i < WIDTH ? 254 : 60))
    made.value.setPlanes(planes, { matrix: 'bt709', range: 'narrow' })
    made.value.draw(viewOf(IDENTITY_GRADE, IDENTITY_FRAMING))
    const flat = new OffscreenCanvas(WIDTH, HEIGHT).getContext('2d')
    flat?.drawImage(canvas, 0, 0)
    const shown = flat?.getImageData(0, 0, WIDTH, HEIGHT).data
    expect(shown?.[0]).toBe(255)
    const grey = Math.round((255 * 44) / 219)
    expect(Math.abs((shown?.[WIDTH * 5 * 4] ?? 0) - grey)).toBeLessThanOrEqual(1)
    made.value.dispose()
  })
})

describe('the moving picture', () => {
  it('is the same picture, sampled at each pixel shown', () => {
    const canvas = new OffscreenCanvas(WIDTH, HEIGHT)
    const made = createPreview(canvas)
    if (!made.ok) throw new Error(made.problems[0].says)
    const shownAs = (view: PreviewView): Uint8ClampedArray | undefined => {
      made.value.draw(view)
      const flat = new OffscreenCanvas(WIDTH, HEIGHT).getContext('2d')
      flat?.drawImage(canvas, 0, 0)
      return flat?.getImageData(0, 0, WIDTH, HEIGHT).data
    }
    for (const layout of ['444', 'rgb'] as const)
      for (const grade of GRADES) {
        const list = MADE_LISTS['a matrix, a curve and a cube'] ?? null
        const base = layout === 'rgb' ? { ...NEGATIVE, list } : PRINT_BASE
        made.value.setPlanes(noise(layout, 10, 9), { matrix: 'bt709', range: 'narrow', base })
        const still = shownAs(viewOf(grade, IDENTITY_FRAMING))
        const moving = shownAs({ ...viewOf(grade, IDENTITY_FRAMING), isMoving: true })
        expect(moving).toEqual(still)
      }
    made.value.dispose()
  })
})
