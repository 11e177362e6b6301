import { describe, expect, it } from 'vitest'
import { codeToChroma, codeToSignal } from '../../../src/core/colour/codeValues.ts'
import { yCbCrToRgb } from '../../../src/core/colour/yCbCr.ts'
import { decodePlanes } from '../../../src/core/picture/decodePlanes.ts'
import { encodePicture } from '../../../src/core/picture/encodePicture.ts'
import type { Layout, MatrixName, Planes, Samples } from '../../../src/core/picture/planes.ts'
import { chromaHeight, chromaWidth } from '../../../src/core/picture/planes.ts'
import { seeded } from '../../support/seeded.ts'

const filled = (count: number, depth: number, at: (i: number) => number): Samples =>
  (depth > 8 ? new Uint16Array(count) : new Uint8Array(count)).map((_, i) => at(i))

type Maker = (x: number, y: number) => number

/** Planes whose luma and Cb are stated sample by sample; Cr is at zero. */
const planesOf = (
  layout: Layout,
  [width, height]: readonly [number, number],
  depth: number,
  luma: Maker,
  cb: Maker,
): Planes => {
  const columns = chromaWidth(layout, width)
  const rows = chromaHeight(layout, height)
  const zero = 128 * 2 ** (depth - 8)
  return {
    width,
    height,
    layout,
    depth,
    samples: [
      filled(width * height, depth, (i) => luma(i % width, Math.floor(i / width))),
      filled(columns * rows, depth, (i) => cb(i % columns, Math.floor(i / columns))),
      filled(columns * rows, depth, () => zero),
    ],
  }
}

/** The Cb a decoded pixel must have come from: (B′ − Y′)/1.8556 with Cr at zero, Y′ = R′. */
const cbCodes = (planes: Planes): readonly number[] => {
  const { r, b } = decodePlanes(planes, { matrix: 'bt709', range: 'narrow' })
  return Array.from(b, (blue, i) => 512 + ((blue - (r[i] ?? 0)) / 1.8556) * 896)
}

const near = (values: readonly number[], expected: readonly number[]) => {
  expect(values).toHaveLength(expected.length)
  for (const [i, value] of values.entries()) expect(value).toBeCloseTo(expected[i] ?? NaN, 9)
}

describe('decoding', () => {
  it.each<MatrixName>(['bt601', 'bt709', 'bt2020'])(
    '%s 4:4:4 is the equation at each pixel',
    (m) => {
      const chance = seeded(4)
      for (const depth of [8, 10, 12]) {
        const any = () => Math.floor(chance() * 2 ** depth)
        const planes = {
          ...planesOf('444', [7, 5], depth, any, any),
          samples: [
            filled(35, depth, any),
            filled(35, depth, any),
            filled(35, depth, any),
          ] as const,
        }
        for (const range of ['narrow', 'full'] as const) {
          const out = decodePlanes(planes, { matrix: m, range })
          for (let i = 0; i < 35; i++) {
            const [y = 0, cb = 0, cr = 0] = planes.samples.map((plane) => plane[i])
            const rgb = yCbCrToRgb(
              [
                codeToSignal(y, depth, range),
                codeToChroma(cb, depth, range),
                codeToChroma(cr, depth, range),
              ],
              m,
            )
            near([out.r[i] ?? NaN, out.g[i] ?? NaN, out.b[i] ?? NaN], rgb)
          }
        }
      }
    },
  )

  it('R′G′B′ samples need no equation', () => {
    const planes = {
      ...planesOf(
        'rgb',
        [3, 1],
        8,
        (x) => [0, 128, 255][x] ?? 0,
        (x) => 85 * x,
      ),
    }
    const out = decodePlanes(planes, { matrix: 'bt709', range: 'full' })
    near([...out.r], [0, 128 / 255, 1])
    near([...out.g], [0, 1 / 3, 2 / 3])
  })

  it('4:2:2 chroma sits on even pixels: odd ones are half-way, the last repeats', () => {
    const planes = planesOf(
      '422',
      [6, 2],
      10,
      () => 500,
      (x, y) => 400 + 40 * x + 7 * y,
    )
    near(cbCodes(planes), [400, 420, 440, 460, 480, 480, 407, 427, 447, 467, 487, 487])
  })

  it('4:2:0 chroma sits left, and between lines: a quarter and three quarters downward', () => {
    const planes = planesOf(
      '420',
      [2, 6],
      10,
      () => 500,
      (_, y) => 400 + 40 * y,
    )
    const column = cbCodes(planes).filter((_, i) => i % 2 === 0)
    near(column, [400, 410, 430, 450, 470, 480])
  })

  it('a chroma ramp stays a straight line at its siting', () => {
    const planes = planesOf(
      '420',
      [16, 16],
      10,
      () => 500,
      (x, y) => 300 + 16 * x + 8 * y,
    )
    const codes = cbCodes(planes)
    for (let y = 1; y < 15; y++)
      for (let x = 0; x < 15; x++)
        expect(codes[y * 16 + x]).toBeCloseTo(300 + 8 * x + 4 * (y - 0.5), 9)
  })

  it('odd sizes have a chroma sample for the last column and line', () => {
    const planes = planesOf(
      '420',
      [3, 3],
      10,
      () => 500,
      (x, y) => 400 + 100 * x + 10 * y,
    )
    expect(planes.samples[1]).toHaveLength(4)
    near(cbCodes(planes), [400, 450, 500, 402.5, 452.5, 502.5, 407.5, 457.5, 507.5])
  })

  it('keeps what is past black and peak', () => {
    const planes = planesOf(
      '444',
      [2, 1],
      8,
      (x) => (x === 0 ? 1 : 254),
      () => 128,
    )
    const out = decodePlanes(planes, { matrix: 'bt709', range: 'narrow' })
    near([...out.g], [-15 / 219, 238 / 219])
  })
})

describe('encoding', () => {
  it.each<[MatrixName, number]>([
    ['bt601', 8],
    ['bt709', 10],
    ['bt2020', 12],
  ])('undoes the decoding of %s at %i bits, code for code', (matrix, depth) => {
    const chance = seeded(9)
    const any = () => Math.floor(chance() * 2 ** depth)
    const samples = [
      filled(400, depth, any),
      filled(400, depth, any),
      filled(400, depth, any),
    ] as const
    const planes: Planes = { width: 20, height: 20, layout: '444', depth, samples }
    const again = encodePicture(decodePlanes(planes, { matrix, range: 'narrow' }), matrix, depth)
    expect(again).toEqual(planes)
  })
})
