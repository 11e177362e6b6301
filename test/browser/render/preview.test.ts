import { describe, expect, it } from 'vitest'
import type { Grade } from '../../../src/core/colour/grade.ts'
import { IDENTITY_GRADE } from '../../../src/core/colour/grade.ts'
import { deliverPicture } from '../../../src/core/picture/deliverPicture.ts'
import { type Framing, IDENTITY_FRAMING } from '../../../src/core/picture/framing.ts'
import {
  type Coding,
  chromaHeight,
  chromaWidth,
  type Layout,
  type Planes,
  type Samples,
} from '../../../src/core/picture/planes.ts'
import { createPreview, type Preview } from '../../../src/render/createPreview.ts'
import type { PreviewView } from '../../../src/render/previewView.ts'
import { seeded } from '../../support/seeded.ts'

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
  { zoom: 1.37, pan: 0.05, tilt: -0.08 },
  { zoom: 0.83, pan: -0.1, tilt: 0.2 },
]

const preview = (width = WIDTH, height = HEIGHT): Preview => {
  const made = createPreview(new OffscreenCanvas(width, height))
  if (!made.ok) throw new Error(made.problems[0].says)
  return made.value
}

const viewOf = (grade: Grade, framing: Framing): PreviewView => ({
  grade,
  framing,
  compare: { kind: 'none' },
  excursions: null,
  isMoving: false,
})

/** The largest difference from the reference, in 10-bit codes, where the reference is in reach. */
const worst = (planes: Planes, coding: Coding, grade: Grade, framing: Framing): number => {
  const drawn = preview()
  drawn.setPlanes(planes, coding)
  const pixels = drawn.readDelivered(viewOf(grade, framing))
  const reference = deliverPicture(planes, coding, grade, framing)
  drawn.dispose()
  let most = 0
  for (let i = 0; i < WIDTH * HEIGHT; i++)
    for (const [c, plane] of [reference.r, reference.g, reference.b].entries()) {
      const difference = Math.abs((pixels[i * 4 + c] as number) - (plane[i] as number))
      most = Math.max(most, difference / CODE / Math.max(1, Math.abs(plane[i] as number)))
    }
  return most
}

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

  it('shows the scan without the grade left of the wipe, and the graded picture right of it', () => {
    const drawn = preview()
    const flat = planesOf('444', 8, (p) => (p === 0 ? 126 : 128))
    drawn.setPlanes(flat, { matrix: 'bt709', range: 'narrow' })
    const half: Grade = { ...IDENTITY_GRADE, gain: [0.5, 0.5, 0.5] }
    const pixels = drawn.readDelivered({
      ...viewOf(half, IDENTITY_FRAMING),
      compare: { kind: 'wipe', at: 0.5 },
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
    const limits = { rgb: [-0.05, 1.05], luma: [-0.05, 1.05], matrix: 'bt709' } as const
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
        made.value.setPlanes(noise(layout, 10, 9), { matrix: 'bt709', range: 'narrow' })
        const still = shownAs(viewOf(grade, IDENTITY_FRAMING))
        const moving = shownAs({ ...viewOf(grade, IDENTITY_FRAMING), isMoving: true })
        expect(moving).toEqual(still)
      }
    made.value.dispose()
  })
})
