import { expect, test } from 'vitest'
import type { Triple } from '../../src/core/colour/triple.ts'
import { LARGEST_NUMBER, SMALLEST_GAMMA } from '../../src/core/job/limits.ts'
import { deliverPicture } from '../../src/core/picture/deliverPicture.ts'
import { IDENTITY_FRAMING } from '../../src/core/picture/framing.ts'
import { pictureLevels } from '../../src/core/tolerance/pictureLevels.ts'
import { EBU_R103_V3 } from '../../src/core/tolerance/profile.ts'
import { builtKernel } from './builtKernel.ts'
import { planesOf } from './randomPictures.ts'

const kernel = await builtKernel()

const alike = (value: number): Triple => [value, value, value]

test.each([
  [SMALLEST_GAMMA, 1.2, 1],
  [0.001, 2, 0],
  [0.001, 2, 0.5],
  [0.001, 2, 1.2],
  [0.01, LARGEST_NUMBER, 1.2],
  [1, LARGEST_NUMBER, 1],
  [LARGEST_NUMBER, 2, 1],
])('gamma %d, gain %d, saturation %d: as much is outside as by the reference', (gamma, gain, s) => {
  const planes = planesOf('rgb', 10, 16, 4, (plane, x) => (x < 8 ? 940 : 64 + 40 * x + 50 * plane))
  const coding = { matrix: 'bt709', range: 'narrow' } as const
  const grade = { lift: alike(0), gamma: alike(gamma), gain: alike(gain), saturation: s }
  const input = { planes, coding, grade, framing: IDENTITY_FRAMING }
  const picture = deliverPicture(planes, coding, grade, IDENTITY_FRAMING)
  for (const filtered of [false, true]) {
    const profile = { ...EBU_R103_V3, filtered }
    const levels = kernel.measureLevels(input, 'bt709', profile)
    const { above, below, outside } = pictureLevels(picture, 'bt709', profile)
    expect(levels).toMatchObject({ above, below, outside })
    for (const { low, high } of [levels.r, levels.g, levels.b, levels.y])
      expect([low, high].every(Number.isFinite)).toBe(true)
  }
})
