import fc from 'fast-check'
import { expect, test } from 'vitest'
import { type FilmBase, PRINT_BASE } from '../../src/core/film/filmBase.ts'
import { deliverPicture } from '../../src/core/picture/deliverPicture.ts'
import { encodePicture } from '../../src/core/picture/encodePicture.ts'
import type { Layout } from '../../src/core/picture/planes.ts'
import { pictureLevels } from '../../src/core/tolerance/pictureLevels.ts'
import { EBU_R103_V3 } from '../../src/core/tolerance/profile.ts'
import type { KernelInput } from '../../src/kernel/kernel.ts'
import { MADE_LISTS } from '../support/madeLists.ts'
import { anyStep } from '../support/processSteps.ts'
import { builtKernel } from './builtKernel.ts'
import { noisePlanes, randomFraming, randomGrade, seeded, shadedPlanes } from './randomPictures.ts'

const kernel = await builtKernel()

const DYES: FilmBase['dyes'] = [
  [1.5, -0.15, 0.05],
  [-0.1, 1.2, -0.1],
  [0.02, -0.2, 1.3],
]
const LAYOUTS: readonly [Layout, number][] = [
  ['420', 8],
  ['422', 10],
  ['444', 10],
  ['rgb', 10],
  ['rgb', 16],
]

const expectWithinOneCode = (input: KernelInput) => {
  const picture = deliverPicture(input.planes, input.coding, input.grade, input.framing)
  const reference = encodePicture(picture, 'bt709', 10)
  const codes = kernel.deliverCodes(input, 'bt709')
  let farthest = 0
  for (const [i, plane] of [codes.y, codes.cb, codes.cr].entries())
    plane.forEach((code, at) => {
      farthest = Math.max(farthest, Math.abs(code - (reference.samples[i]?.[at] ?? 0)))
    })
  expect(farthest).toBeLessThanOrEqual(1)
  const levels = kernel.measureLevels(input, 'bt709', EBU_R103_V3)
  const wanted = pictureLevels(picture, 'bt709', EBU_R103_V3)
  for (const figure of ['r', 'g', 'b', 'y'] as const)
    for (const end of ['low', 'high'] as const) {
      const level = wanted[figure][end]
      const apart = Math.abs(levels[figure][end] - level)
      expect(apart).toBeLessThan(0.001 * Math.max(1, Math.abs(level)))
    }
}

for (const [name, list] of Object.entries(MADE_LISTS))
  for (const [layout, depth] of LAYOUTS)
    test(`${name} in the base is delivered within one code: ${layout}, ${depth} bit`, () => {
      const random = seeded(depth)
      const range = layout === 'rgb' ? 'full' : 'narrow'
      for (const base of [
        { ...PRINT_BASE, list },
        { ...PRINT_BASE, scan: 'negative', clear: [0.25, 0.6, 0.85], dyes: DYES, list },
      ] as const)
        for (const planes of [
          shadedPlanes(random, layout, depth, 83, 40),
          noisePlanes(random, layout, depth, 37, 22),
        ])
          expectWithinOneCode({
            planes,
            coding: { matrix: 'bt709', range, base },
            grade: randomGrade(random),
            framing: randomFraming(random),
          })
    })

test('any list of a film transfer is delivered within one code', () => {
  const random = seeded(7)
  fc.assert(
    fc.property(fc.array(anyStep('usual'), { minLength: 1, maxLength: 3 }), (steps) => {
      const base: FilmBase = { ...PRINT_BASE, list: { name: 'any', steps } }
      expectWithinOneCode({
        planes: shadedPlanes(random, 'rgb', 10, 35, 16),
        coding: { matrix: 'bt709', range: 'full', base },
        grade: { lift: [0, 0, 0], gamma: [1, 1, 1], gain: [1, 1, 1], saturation: 1 },
        framing: randomFraming(random),
      })
    }),
    { seed: 1, numRuns: 300 },
  )
})

test('any list that a job may hold leaves finite levels', () => {
  const random = seeded(9)
  fc.assert(
    fc.property(fc.array(anyStep('any'), { minLength: 1, maxLength: 6 }), (steps) => {
      const base: FilmBase = { ...PRINT_BASE, list: { name: 'any', steps } }
      const planes = noisePlanes(random, 'rgb', 10, 19, 8)
      const coding = { matrix: 'bt709', range: 'narrow', base } as const
      const input = { planes, coding, grade: randomGrade(random), framing: randomFraming(random) }
      const levels = kernel.measureLevels(input, 'bt709', EBU_R103_V3)
      for (const figure of ['r', 'g', 'b', 'y'] as const)
        for (const end of ['low', 'high'] as const)
          expect(Number.isFinite(levels[figure][end])).toBe(true)
    }),
    { seed: 1, numRuns: 500 },
  )
})

test('a reel without a list is measured as before one with a list came', () => {
  const random = seeded(3)
  const planes = shadedPlanes(random, '422', 10, 64, 24)
  const input = (list: FilmBase['list']): KernelInput => ({
    planes,
    coding: { matrix: 'bt709', range: 'narrow', base: { ...PRINT_BASE, list } },
    grade: randomGrade(seeded(4)),
    framing: randomFraming(seeded(5)),
  })
  const before = kernel.deliverCodes(input(null), 'bt709')
  for (const list of Object.values(MADE_LISTS)) {
    const listed = kernel.deliverCodes(input(list), 'bt709')
    expect(listed.y).not.toEqual(before.y)
    expect(kernel.deliverCodes(input(null), 'bt709')).toEqual(before)
  }
})
