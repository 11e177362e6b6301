import { expect, test } from 'vitest'
import { type CellMeans, createCellMeans } from '../../src/core/flashes/cellMeans.ts'
import { meanCells } from '../../src/core/flashes/meanCells.ts'
import { deliverPicture } from '../../src/core/picture/deliverPicture.ts'
import { IDENTITY_FRAMING } from '../../src/core/picture/framing.ts'
import type { Layout } from '../../src/core/picture/planes.ts'
import { EBU_R103_V3 } from '../../src/core/tolerance/profile.ts'
import type { KernelInput } from '../../src/kernel/kernel.ts'
import { referenceKernel } from '../../src/kernel/referenceKernel.ts'
import { builtKernel } from './builtKernel.ts'
import { noisePlanes, randomFraming, randomGrade, seeded, shadedPlanes } from './randomPictures.ts'

const kernel = await builtKernel()
const LAYOUTS: readonly Layout[] = ['420', '422', '444', 'rgb']
const PROFILES = [EBU_R103_V3, { ...EBU_R103_V3, filtered: false }]

/** Levels are f32 through a table, and sums of hundreds of them. */
const EPSILON = 1e-4

const expectNear = (cells: CellMeans, wanted: CellMeans, of: string): void => {
  for (const channel of ['r', 'g', 'b'] as const) {
    const worst = cells[channel].reduce(
      (most, mean, i) => Math.max(most, Math.abs(mean - (wanted[channel][i] ?? Number.NaN))),
      0,
    )
    expect(worst, `${channel} ${of}`).toBeLessThan(EPSILON)
  }
}

test('cells cover a picture with whole pixels, as evenly as can be', () => {
  const full = createCellMeans(1920, 1080).pixels
  expect(full).toHaveLength(128 * 72)
  expect(new Set(full)).toEqual(new Set([225]))
  for (const [width, height] of [
    [720, 576],
    [37, 23],
    [1, 1],
    [129, 73],
  ] as const) {
    const { pixels } = createCellMeans(width, height)
    expect(pixels.reduce((sum, count) => sum + count, 0)).toBe(width * height)
    expect(Math.min(...pixels)).toBeGreaterThan(0)
  }
})

test('cells of pictures of every layout have the means of the reference', () => {
  const random = seeded(61)
  for (const layout of LAYOUTS)
    for (const profile of PROFILES)
      for (const [width, height] of [
        [37, 23],
        [1, 1],
        [131, 75],
        [300, 160],
      ] as const)
        for (let round = 0; round < 4; round++) {
          const input: KernelInput = {
            planes:
              round % 2 === 0
                ? noisePlanes(random, layout, 10, width, height)
                : shadedPlanes(random, layout, 8, width, height),
            coding: { matrix: 'bt709', range: 'narrow' },
            grade: randomGrade(random),
            framing: round > 1 ? randomFraming(random) : IDENTITY_FRAMING,
          }
          const cells = createCellMeans(width, height)
          const wanted = createCellMeans(width, height)
          const { planes, coding, grade, framing } = input
          meanCells(deliverPicture(planes, coding, grade, framing), wanted)
          const levels = kernel.measureLevels(input, 'bt709', profile, undefined, cells)
          expectNear(cells, wanted, JSON.stringify({ layout, width, grade, framing }))
          expect(kernel.measureLevels(input, 'bt709', profile)).toEqual(levels)
        }
})

test('the reference kernel writes them too', () => {
  const planes = shadedPlanes(seeded(3), '420', 8, 64, 36)
  const input: KernelInput = {
    planes,
    coding: { matrix: 'bt709', range: 'narrow' },
    grade: randomGrade(seeded(4)),
    framing: IDENTITY_FRAMING,
  }
  const [ours, theirs] = [createCellMeans(64, 36), createCellMeans(64, 36)]
  kernel.measureLevels(input, 'bt709', EBU_R103_V3, undefined, ours)
  referenceKernel().measureLevels(input, 'bt709', EBU_R103_V3, undefined, theirs)
  expectNear(ours, theirs, 'of the reference kernel')
})
