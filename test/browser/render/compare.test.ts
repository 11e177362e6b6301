import { afterAll, describe, expect, it } from 'vitest'
import { displaySignal } from '../../../src/core/colour/displaySignal.ts'
import { type Grade, IDENTITY_GRADE } from '../../../src/core/colour/grade.ts'
import type { Triple } from '../../../src/core/colour/triple.ts'
import { type Framing, IDENTITY_FRAMING } from '../../../src/core/picture/framing.ts'
import type { Coding, MatrixName, Planes } from '../../../src/core/picture/planes.ts'
import { levelLimits } from '../../../src/core/tolerance/levelLimits.ts'
import { EBU_R103_V3 } from '../../../src/core/tolerance/profile.ts'
import { createPreview, type Preview } from '../../../src/render/createPreview.ts'
import {
  type Compare,
  DIFFERENCE_GAIN,
  type PreviewView,
  type Side,
} from '../../../src/render/previewView.ts'
import { previewPicture } from '../../support/previewPicture.ts'
import { seeded } from '../../support/seeded.ts'

const WIDTH = 64
const HEIGHT = 36
const CODING: Coding = { matrix: 'bt709', range: 'narrow' }

const WARM: Grade = {
  lift: [0.02, 0, -0.02],
  gamma: [1.2, 1, 0.9],
  gain: [1.1, 1, 0.9],
  saturation: 1.1,
}
const CLOSER: Framing = { ...IDENTITY_FRAMING, zoom: 1.4, pan: 0.06, tilt: -0.1 }

const rgbPlanes = (
  at: (c: number, x: number, y: number) => number,
  width = WIDTH,
  height = HEIGHT,
): Planes => {
  const plane = (c: number) =>
    Uint16Array.from({ length: width * height }, (_, i) => at(c, i % width, Math.floor(i / width)))
  return { width, height, layout: 'rgb', depth: 10, samples: [plane(0), plane(1), plane(2)] }
}

const noise = (seed: number): Planes => {
  const random = seeded(seed)
  return rgbPlanes(() => 64 + Math.floor(random() * 877))
}

const flat = (...codes: readonly [number, number, number]): Planes =>
  rgbPlanes((c) => codes[c] as number)

const sideOf = (planes: Planes, change: Partial<Side> = {}): Side => ({
  planes,
  coding: CODING,
  grade: IDENTITY_GRADE,
  framing: IDENTITY_FRAMING,
  isMarked: false,
  ...change,
})

const viewOf = (compare: Compare, change: Partial<PreviewView> = {}): PreviewView => ({
  grade: WARM,
  framing: CLOSER,
  compare,
  excursions: null,
  isMoving: false,
  ...change,
})

const open = (canvas: OffscreenCanvas): Preview => {
  const made = createPreview(canvas)
  if (!made.ok) throw new Error(made.problems[0].says)
  return made.value
}

const canvas = new OffscreenCanvas(WIDTH, HEIGHT)
const drawn = open(canvas)
afterAll(() => drawn.dispose())

/** What was drawn on the canvas, as the bytes that it holds in its colour space, top row first. */
const shown = (): Uint8Array => {
  const gl = canvas.getContext('webgl2')
  if (!gl) throw new Error('no WebGL2')
  const { width, height } = canvas
  const bytes = new Uint8Array(width * height * 4)
  gl.readPixels(0, 0, width, height, gl.RGBA, gl.UNSIGNED_BYTE, bytes)
  return bytes.map((_, i) => {
    const [row, place] = [Math.floor(i / (width * 4)), i % (width * 4)]
    return bytes[(height - 1 - row) * width * 4 + place] as number
  })
}

/** The largest difference from what the reference delivers, over columns `from` up to `to`. */
const worst = (pixels: Float32Array, side: Side, from: number, to: number): number => {
  const { r, g, b } = previewPicture(side.planes, side.coding, side.grade, side.framing)
  let most = 0
  for (let y = 0; y < HEIGHT; y++)
    for (let x = from; x < to; x++)
      for (const [c, plane] of [r, g, b].entries()) {
        const i = y * WIDTH + x
        most = Math.max(most, Math.abs((pixels[i * 4 + c] as number) - (plane[i] as number)))
      }
  return most
}

describe('the wipe', () => {
  const [main, other] = [noise(1), noise(2)]
  const mine = sideOf(main, { grade: WARM, framing: CLOSER })
  const theirs = sideOf(other, { framing: { ...IDENTITY_FRAMING, rotation: 4 } })

  it.each([
    [0, 0],
    [0.25, 16],
    [0.256, 16],
    [0.26, 17],
    [0.5, 32],
    [1, WIDTH],
  ])('at %f is exact to a pixel, each side with its own frame, grade and framing', (at, column) => {
    drawn.setPlanes(main, CODING)
    const pixels = drawn.readDelivered(viewOf({ kind: 'wipe', at, other: theirs }))
    expect(worst(pixels, theirs, 0, column)).toBeLessThan(1 / 876)
    expect(worst(pixels, mine, column, WIDTH)).toBeLessThan(1 / 876)
  })

  it('is at the same place while it moves', () => {
    drawn.setPlanes(flat(940, 940, 940), CODING)
    const view = viewOf({ kind: 'wipe', at: 0.25, other: sideOf(flat(64, 64, 64)) })
    for (const isMoving of [false, true]) {
      drawn.draw({ ...view, grade: IDENTITY_GRADE, isMoving })
      const row = [...shown()].filter((_, i) => i < WIDTH * 4 && i % 4 === 0)
      expect(row.indexOf(255)).toBe(16)
      expect(row.lastIndexOf(0)).toBe(15)
    }
  })

  it('fits a picture of another shape in, with black round it', () => {
    const square = rgbPlanes(() => 940, 40, 40)
    drawn.setPlanes(flat(502, 502, 502), CODING)
    drawn.draw(viewOf({ kind: 'wipe', at: 1, other: sideOf(square) }))
    const row = [...shown()].filter((_, i) => i < WIDTH * 4 && i % 4 === 0)
    const edge = (WIDTH - HEIGHT) / 2
    expect(row.indexOf(255)).toBe(edge)
    expect(row.lastIndexOf(255)).toBe(WIDTH - edge - 1)
    expect(row[0]).toBe(0)
  })

  it('marks excursions on the main picture, and on a side only where it says so', () => {
    const over = flat(1019, 1019, 1019)
    drawn.setPlanes(over, CODING)
    const excursions = { ...levelLimits(EBU_R103_V3), matrix: 'bt709' } as const
    const levels = [false, true].map((isMarked) => {
      const compare = { kind: 'wipe', at: 0.5, other: sideOf(over, { isMarked }) } as const
      const pixels = drawn.readDelivered(viewOf(compare, { grade: IDENTITY_GRADE, excursions }))
      const kinds = (from: number) =>
        new Set(Array.from({ length: 12 }, (_, x) => pixels[(5 * WIDTH + from + x) * 4])).size
      return [kinds(4), kinds(44)]
    })
    expect(levels).toEqual([
      [1, 2],
      [2, 2],
    ])
  })
})

describe('tiles', () => {
  const areas = [
    { left: 0, top: 0, width: 0.5, height: 0.5 },
    { left: 0.5, top: 0, width: 0.5, height: 0.5 },
    { left: 0, top: 0.5, width: 0.5, height: 0.5 },
  ] as const
  const codes = [940, 502, 283] as const
  const levels = [255, 127.5, 63.75]

  it.each([false, true])('stand each in its own area, grey between them (moving: %s)', (moving) => {
    drawn.setPlanes(flat(codes[0], codes[0], codes[0]), CODING)
    const others = [1, 2].map((n) => {
      const code = codes[n] as number
      return { side: sideOf(flat(code, code, code)), area: areas[n] as (typeof areas)[number] }
    })
    const compare = { kind: 'tiles', main: areas[0], others } as const
    drawn.draw(
      viewOf(compare, { grade: IDENTITY_GRADE, framing: IDENTITY_FRAMING, isMoving: moving }),
    )
    const data = shown()
    const at = (x: number, y: number) => data[(y * WIDTH + x) * 4] as number
    for (const [n, [x, y]] of [
      [0, 0],
      [32, 0],
      [0, 18],
    ].entries()) {
      const level = levels[n] as number
      for (const [dx, dy] of [
        [0, 0],
        [31, 0],
        [0, 17],
        [31, 17],
      ])
        expect(
          Math.abs(at((x as number) + (dx as number), (y as number) + (dy as number)) - level),
        ).toBeLessThanOrEqual(1)
    }
    expect(at(40, 25)).toBe(0x2b)
  })

  it('show the picture as it is drawn alone at that size, as near as few samples come', () => {
    const waves = rgbPlanes((c, x, y) => 502 + Math.round(300 * Math.sin((x + y) / 9 + c)))
    drawn.setPlanes(waves, CODING)
    const whole = { left: 0, top: 0, width: 1, height: 1 }
    canvas.width = WIDTH / 2
    canvas.height = HEIGHT / 2
    drawn.draw(viewOf({ kind: 'none' }))
    const alone = shown()
    drawn.draw(viewOf({ kind: 'tiles', main: whole, others: [] }))
    const tile = shown()
    canvas.width = WIDTH
    canvas.height = HEIGHT
    const apart = alone.map((value, i) => Math.abs(value - (tile[i] as number)))
    expect(Math.max(...apart)).toBeLessThan(8)
    expect(new Set(tile).size).toBeGreaterThan(20)
  })
})

describe('the difference', () => {
  it('is four times what lies between the delivered pictures, about black', () => {
    const [main, other] = [noise(3), noise(4)]
    const theirs = sideOf(other, { grade: WARM })
    drawn.setPlanes(main, CODING)
    const pixels = drawn.readDelivered(viewOf({ kind: 'difference', other: theirs }))
    const a = previewPicture(main, CODING, WARM, CLOSER)
    const b = previewPicture(other, CODING, WARM, IDENTITY_FRAMING)
    let most = 0
    for (let i = 0; i < WIDTH * HEIGHT; i++)
      for (const [c, name] of (['r', 'g', 'b'] as const).entries()) {
        const apart = DIFFERENCE_GAIN * Math.abs((a[name][i] as number) - (b[name][i] as number))
        most = Math.max(most, Math.abs(apart - (pixels[i * 4 + c] as number)))
      }
    expect(DIFFERENCE_GAIN).toBe(4)
    expect(most).toBeLessThan(4 / 876)
  })

  it('of a picture from itself is black, at rest and moving, upright on the canvas', () => {
    const half = rgbPlanes((_, __, y) => (y < HEIGHT / 2 ? 940 : 64))
    drawn.setPlanes(half, CODING)
    const plain = { grade: IDENTITY_GRADE, framing: IDENTITY_FRAMING }
    for (const isMoving of [false, true]) {
      const view = { ...plain, isMoving }
      drawn.draw(viewOf({ kind: 'difference', other: sideOf(half) }, view))
      expect(Math.max(...shown().filter((_, i) => i % 4 < 3))).toBe(0)
      drawn.draw(viewOf({ kind: 'difference', other: sideOf(flat(64, 64, 64)) }, view))
      const data = shown()
      expect(data[0]).toBe(255)
      expect(data[(HEIGHT - 1) * WIDTH * 4]).toBe(0)
    }
  })
})

describe('what a display is sent', () => {
  const cases = (['bt709', 'bt2020'] as const).flatMap((matrix) =>
    (['srgb', 'display-p3', 'as-coded'] as const).map((space) => ({ matrix, space })),
  )

  it.each(cases)('for $matrix on $space is what core has, to one of 255', ({ matrix, space }) => {
    const planes = noise(5)
    const coding = { matrix, range: 'narrow' } as const satisfies Coding & { matrix: MatrixName }
    drawn.setPlanes(planes, coding)
    const view = { grade: WARM, framing: IDENTITY_FRAMING, display: space }
    const delivered = previewPicture(planes, coding, WARM, IDENTITY_FRAMING)
    for (const isMoving of [false, true]) {
      drawn.draw(viewOf({ kind: 'none' }, { ...view, isMoving }))
      const data = shown()
      const colourSpace = canvas.getContext('webgl2')?.drawingBufferColorSpace
      expect(colourSpace).toBe(space === 'display-p3' ? 'display-p3' : 'srgb')
      let most = 0
      for (let i = 0; i < WIDTH * HEIGHT; i++) {
        const signal = [delivered.r[i], delivered.g[i], delivered.b[i]] as unknown as Triple
        for (const [c, value] of displaySignal(signal, matrix, space).entries())
          most = Math.max(most, Math.abs(255 * value - (data[i * 4 + c] as number)))
      }
      expect(most).toBeLessThanOrEqual(1)
    }
  })

  it('does not touch what is delivered', () => {
    const planes = noise(6)
    drawn.setPlanes(planes, CODING)
    const pixels = drawn.readDelivered(viewOf({ kind: 'none' }, { display: 'display-p3' }))
    const side = sideOf(planes, { grade: WARM, framing: CLOSER })
    expect(worst(pixels, side, 0, WIDTH)).toBeLessThan(1 / 876)
  })
})

describe('many pictures', () => {
  it('come and go without one being taken for another', () => {
    const random = seeded(9)
    const frames = [noise(11), noise(12), noise(13)] as const
    const grades = [IDENTITY_GRADE, WARM, { ...WARM, saturation: 0 }]
    for (let n = 0; n < 60; n++) {
      const pick = <Item>(items: readonly Item[]): Item =>
        items[Math.floor(random() * items.length)] as Item
      const mine = sideOf(pick(frames), { grade: pick(grades), framing: CLOSER })
      const theirs = sideOf(pick(frames), { grade: pick(grades) })
      drawn.setPlanes(mine.planes, CODING)
      const compare: Compare =
        random() < 0.4 ? { kind: 'none' } : { kind: 'wipe', at: 0.5, other: theirs }
      const pixels = drawn.readDelivered(viewOf(compare, { grade: mine.grade }))
      expect(worst(pixels, mine, 32, WIDTH)).toBeLessThan(1 / 876)
      if (compare.kind === 'wipe') expect(worst(pixels, theirs, 0, 32)).toBeLessThan(1 / 876)
    }
  })
})
