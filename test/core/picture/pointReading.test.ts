import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { displayedRgbToLab } from '../../../src/core/colour/cieLab.ts'
import { deltaE2000 } from '../../../src/core/colour/deltaE2000.ts'
import { type Grade, gradeColour, IDENTITY_GRADE } from '../../../src/core/colour/grade.ts'
import type { Triple } from '../../../src/core/colour/triple.ts'
import { PRINT_BASE } from '../../../src/core/film/filmBase.ts'
import { decodePlanes } from '../../../src/core/picture/decodePlanes.ts'
import { decodeWindow } from '../../../src/core/picture/decodeWindow.ts'
import type { Layout, Planes } from '../../../src/core/picture/planes.ts'
import {
  pixelAt,
  pointColour,
  pointDifference,
  pointFigures,
} from '../../../src/core/picture/pointReading.ts'
import { applyProcess } from '../../../src/core/process/applyProcess.ts'
import { noisePlanes } from '../../kernel/randomPictures.ts'
import { MADE_LISTS } from '../../support/madeLists.ts'
import { seeded } from '../../support/seeded.ts'
import bars from '../../vectors/bars.json' with { type: 'json' }

const NEGATIVE = {
  matrix: 'bt709',
  range: 'narrow',
  base: { ...PRINT_BASE, scan: 'negative', clear: [0.2, 0.5, 0.7] },
} as const
const LISTED = {
  matrix: 'bt709',
  range: 'narrow',
  base: { ...PRINT_BASE, list: MADE_LISTS['a matrix, a curve and a cube'] ?? null },
} as const
const FULL = { matrix: 'bt601', range: 'full' } as const

const GRADE: Grade = {
  lift: [0.02, -0.03, 0.05],
  gamma: [1.3, 0.8, 1],
  gain: [1.1, 0.9, 1.2],
  saturation: 1.2,
}

const layouts = fc.constantFrom<Layout>('420', '422', '444', 'rgb')

/** A picture, and a window inside it. */
const windows = fc
  .record({ width: fc.integer({ min: 1, max: 23 }), height: fc.integer({ min: 1, max: 17 }) })
  .chain(({ width, height }) =>
    fc.record({
      width: fc.constant(width),
      height: fc.constant(height),
      left: fc.integer({ min: 0, max: width - 1 }),
      top: fc.integer({ min: 0, max: height - 1 }),
      right: fc.integer({ min: 1, max: width }),
      bottom: fc.integer({ min: 1, max: height }),
    }),
  )
  .filter(({ left, right, top, bottom }) => left < right && top < bottom)

describe('a window of a scan', () => {
  it('is decoded as the whole scan is, to the last bit', () => {
    fc.assert(
      fc.property(
        windows,
        layouts,
        fc.constantFrom(8, 10),
        fc.nat(),
        (part, layout, depth, seed) => {
          const planes = noisePlanes(seeded(seed), layout, depth, part.width, part.height)
          for (const coding of [FULL, NEGATIVE, LISTED]) {
            const whole = decodePlanes(planes, coding)
            const window = decodeWindow(planes, coding, part)
            for (let y = 0; y < window.height; y++)
              for (let x = 0; x < window.width; x++) {
                const from = (part.top + y) * part.width + part.left + x
                for (const channel of ['r', 'g', 'b'] as const)
                  expect(window[channel][y * window.width + x]).toBe(whole[channel][from])
              }
          }
        },
      ),
    )
  })
})

const planesOfCodes = (codes: readonly number[], count: number): Planes => {
  const plane = (code = 0) => new Uint16Array(count).fill(code)
  const samples = [plane(codes[0]), plane(codes[1]), plane(codes[2])] as const
  return { width: count, height: 1, layout: '444', depth: 10, samples }
}

describe('a point reading', () => {
  it.each(bars.rows)('of $matrix $bar at $amplitude is the published codes again', (row) => {
    const matrix = row.matrix as 'bt601' | 'bt709'
    const planes = planesOfCodes(row.code10, 7)
    const source = { planes, coding: { matrix, range: 'narrow' }, grade: IDENTITY_GRADE } as const
    for (const size of [1, 5] as const) {
      const figures = pointFigures(pointColour(source, { x: 0.5, y: 0.5 }, size), matrix)
      expect([figures.y.code, figures.cb.code, figures.cr.code]).toEqual(row.code10)
      // A code is 0.8 mV of luma: half of it may be rounded away.
      expect(Math.abs(figures.y.value * 700 - row.lumaMv)).toBeLessThan(0.4 + bars.epsilonMv)
    }
  })

  it('goes through the list of the base before the grade', () => {
    const planes = planesOfCodes([500, 500, 480], 1)
    const source = { planes, coding: LISTED, grade: GRADE }
    const scanned = decodePlanes(planes, { matrix: 'bt709', range: 'narrow' })
    const list = applyProcess(LISTED.base.list ?? { name: '', steps: [] }, [
      scanned.r[0] ?? 9,
      scanned.g[0] ?? 9,
      scanned.b[0] ?? 9,
    ])
    expect(pointColour(source, { x: 0, y: 0 }, 1)).toEqual(gradeColour(list, GRADE))
    expect(list).not.toEqual([scanned.r[0], scanned.g[0], scanned.b[0]])
  })

  it('is the graded pixel, or the mean of the graded pixels about it, cut at the edge', () => {
    const planes = noisePlanes(seeded(7), '420', 8, 12, 9)
    const coding = { matrix: 'bt709', range: 'narrow' } as const
    const whole = decodePlanes(planes, coding)
    const graded = (x: number, y: number): Triple => {
      const i = y * 12 + x
      return gradeColour([whole.r[i] ?? 9, whole.g[i] ?? 9, whole.b[i] ?? 9], GRADE)
    }
    const source = { planes, coding, grade: GRADE }
    expect(pointColour(source, { x: 5.4 / 12, y: 3.9 / 9 }, 1)).toEqual(graded(5, 3))
    // At the lower right corner nine of the 25 pixels are on the scan.
    const pixels = [9, 10, 11].flatMap((x) => [6, 7, 8].map((y) => graded(x, y)))
    const [, mean] = pointColour(source, { x: 1, y: 1 }, 5)
    expect(mean).toBeCloseTo(pixels.reduce((sum, [, g]) => sum + g, 0) / 9, 12)
  })

  it('finds the pixel of a place, and stays on the scan', () => {
    const planes = planesOfCodes([64, 512, 512], 10)
    expect(pixelAt(planes, { x: 0.3, y: 0 })).toEqual({ x: 3, y: 0 })
    expect(pixelAt(planes, { x: 1, y: 1 })).toEqual({ x: 9, y: 0 })
    expect(pixelAt(planes, { x: -0.1, y: 2 })).toEqual({ x: 0, y: 0 })
  })

  it('says where a level lies past what 10 bits can carry', () => {
    const { r, g, b, y } = pointFigures([1.2, -0.2, 0.5], 'bt709')
    expect([r.past, g.past, b.past]).toEqual([1, -1, 0])
    expect([r.code, g.code, b.code]).toEqual([1023, 0, 502])
    expect(y.value).toBeCloseTo(0.2126 * 1.2 - 0.7152 * 0.2 + 0.0722 * 0.5, 12)
  })

  it('differs from another by ΔE00 of what a display shows, and not from itself', () => {
    const [a, b] = [[0.4, 0.42, 0.44] as const, [0.5, 0.42, 0.3] as const]
    expect(pointDifference(a, b)).toBe(deltaE2000(displayedRgbToLab(a), displayedRgbToLab(b)))
    expect(pointDifference(a, b)).toBeGreaterThan(5)
    expect(pointDifference(a, a)).toBe(0)
  })
})
