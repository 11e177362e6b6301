import { expect, test } from 'vitest'
import { type FilmBase, PRINT_BASE } from '../../src/core/film/filmBase.ts'
import { deliverPicture } from '../../src/core/picture/deliverPicture.ts'
import { encodePicture } from '../../src/core/picture/encodePicture.ts'
import type { Coding, Layout } from '../../src/core/picture/planes.ts'
import { pictureLevels } from '../../src/core/tolerance/pictureLevels.ts'
import { EBU_R103_V3 } from '../../src/core/tolerance/profile.ts'
import { builtKernel } from './builtKernel.ts'
import { planesOf, randomFraming, randomGrade, seeded, shadedPlanes } from './randomPictures.ts'

const kernel = await builtKernel()

const DYES: FilmBase['dyes'] = [
  [1.5, -0.15, 0.05],
  [-0.1, 1.2, -0.1],
  [0.02, -0.2, 1.3],
]
const BASES: Readonly<Record<string, FilmBase>> = {
  'a print with its dyes restored': { ...PRINT_BASE, dyes: DYES },
  'printing density': { ...PRINT_BASE, scan: 'printing-density' },
  'printing density with dyes restored': { ...PRINT_BASE, scan: 'printing-density', dyes: DYES },
  'a negative': {
    ...PRINT_BASE,
    scan: 'negative',
    clear: [0.25, 0.6, 0.85],
    gamma: [0.6, 0.65, 0.7],
  },
  'a negative with dyes restored': {
    scan: 'negative',
    clear: [0.25, 0.6, 0.85],
    gamma: [0.6, 0.65, 0.7],
    dyes: DYES,
    list: null,
  },
}
const LAYOUTS: readonly [Layout, number][] = [
  ['420', 8],
  ['422', 10],
  ['444', 10],
  ['rgb', 10],
  ['rgb', 16],
]

for (const [name, base] of Object.entries(BASES))
  for (const [layout, depth] of LAYOUTS)
    test(`${name} is delivered within one code: ${layout}, ${depth} bit`, () => {
      const random = seeded(depth)
      const coding: Coding = { matrix: 'bt709', range: layout === 'rgb' ? 'full' : 'narrow', base }
      const ramp = planesOf(layout, depth, 96, 20, (_, x) => (x / 95) * (2 ** depth - 1))
      for (const planes of [shadedPlanes(random, layout, depth, 83, 40), ramp]) {
        const input = { planes, coding, grade: randomGrade(random), framing: randomFraming(random) }
        const picture = deliverPicture(planes, coding, input.grade, input.framing)
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
            expect(Math.abs(levels[figure][end] - level)).toBeLessThan(
              0.001 * Math.max(1, Math.abs(level)),
            )
          }
      }
    })
