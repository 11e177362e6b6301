import { expect, test } from 'vitest'
import { IDENTITY_GRADE } from '../../src/core/colour/grade.ts'
import { deliverPicture } from '../../src/core/picture/deliverPicture.ts'
import { encodePicture } from '../../src/core/picture/encodePicture.ts'
import { type Framing, IDENTITY_FRAMING } from '../../src/core/picture/framing.ts'
import type { Layout } from '../../src/core/picture/planes.ts'
import { pictureLevels } from '../../src/core/tolerance/pictureLevels.ts'
import { EBU_R103_V3 } from '../../src/core/tolerance/profile.ts'
import type { KernelInput } from '../../src/kernel/kernel.ts'
import { builtKernel } from './builtKernel.ts'
import {
  between,
  noisePlanes,
  planesOf,
  type Random,
  randomGrade,
  seeded,
} from './randomPictures.ts'

const kernel = await builtKernel()
/** Half a thousandth of a 10-bit code: limits are wider by twice that (`levelLimits`). */
const HALF_SLACK = 0.0005 / 876
const UNFILTERED = { ...EBU_R103_V3, filtered: false }
const LAYOUTS: readonly Layout[] = ['420', '422', '444', 'rgb']

/** Anything a job may hold, made larger and smaller alike, turned every second time. */
const anyFraming = (random: Random): Framing => ({
  zoom: 2 ** between(random, -2, 3),
  pan: between(random, -0.5, 0.5),
  tilt: between(random, -0.5, 0.5),
  rotation: random() < 0.5 ? 0 : between(random, -180, 180),
  squeeze: 2 ** between(random, -2, 2),
  blanking: random() < 0.5 ? 0 : between(random, -0.5, 0.5),
})

/** Codes within one of the reference's, and the ends of levels as near as f32 comes. */
const expectReference = (input: KernelInput): void => {
  const { planes, coding, grade, framing } = input
  const told = JSON.stringify({ coding, framing, size: [planes.width, planes.height] })
  const picture = deliverPicture(planes, coding, grade, framing)
  const codes = kernel.deliverCodes(input, 'bt709')
  const wanted = encodePicture(picture, 'bt709', 10)
  for (const [i, plane] of [codes.y, codes.cb, codes.cr].entries())
    plane.forEach((code, at) => {
      const apart = Math.abs(code - (wanted.samples[i]?.[at] ?? Number.NaN))
      if (!(apart <= 1)) throw new Error(`${apart} codes at ${at} of plane ${i}: ${told}`)
    })
  const levels = kernel.measureLevels(input, 'bt709', UNFILTERED)
  const reference = pictureLevels(picture, 'bt709', UNFILTERED)
  for (const channel of ['r', 'g', 'b', 'y'] as const)
    for (const end of ['low', 'high'] as const)
      expect(Math.abs(levels[channel][end] - reference[channel][end]), told).toBeLessThan(2e-5)
}

test.each(LAYOUTS)(
  'noise of every size and framing is framed as the reference does: %s',
  (layout) => {
    const random = seeded(300 + LAYOUTS.indexOf(layout))
    for (let i = 0; i < 60; i++) {
      const [width, height] = [1 + Math.floor(random() * 90), 1 + Math.floor(random() * 60)]
      expectReference({
        planes: noisePlanes(random, layout, i % 2 ? 8 : 10, width, height),
        coding: { matrix: 'bt709', range: 'narrow', pixelAspect: between(random, 0.7, 1.5) },
        grade: randomGrade(random),
        framing: anyFraming(random),
      })
    }
  },
)

test('pictures of several bands are framed as the reference does', () => {
  const random = seeded(310)
  for (const change of [
    { zoom: 0.25, squeeze: 0.25 },
    { zoom: 0.3, tilt: 0.4 },
    { zoom: 1.02, pan: 0.01 },
    { zoom: 8, tilt: -0.9 },
    { squeeze: 0.4, rotation: 2 },
  ])
    expectReference({
      planes: noisePlanes(random, '420', 8, 613, 171),
      coding: { matrix: 'bt709', range: 'narrow' },
      grade: IDENTITY_GRADE,
      framing: { ...IDENTITY_FRAMING, ...change },
    })
})

test('one level stays that level to half the slack of limits, and a pan by whole pixels keeps every code', () => {
  const random = seeded(320)
  const flat = planesOf('rgb', 10, 97, 55, () => 940)
  const coding = { matrix: 'bt709', range: 'narrow' } as const
  for (let i = 0; i < 40; i++) {
    const framing = { ...anyFraming(random), blanking: 0, pan: 0, tilt: 0 }
    const { r } = kernel.measureLevels(
      { planes: flat, coding, grade: IDENTITY_GRADE, framing },
      'bt709',
      UNFILTERED,
    )
    expect(Math.abs(r.high - 1)).toBeLessThan(HALF_SLACK)
    // Nothing lies between black, where nothing is shown, and the level.
    expect(Math.min(Math.abs(r.low - 1), Math.abs(r.low))).toBeLessThan(HALF_SLACK)
  }
  const noise = noisePlanes(random, 'rgb', 10, 96, 54)
  const input = { planes: noise, coding, grade: IDENTITY_GRADE, framing: IDENTITY_FRAMING }
  const rest = kernel.deliverCodes(input, 'bt709')
  const framing = { ...IDENTITY_FRAMING, pan: 12 / 96, tilt: 6 / 54 }
  const panned = kernel.deliverCodes({ ...input, framing }, 'bt709')
  for (let y = 0; y < 48; y++)
    for (let x = 0; x < 84; x++)
      expect(Math.abs((panned.y[y * 96 + x] ?? 0) - (rest.y[(y + 6) * 96 + x + 12] ?? 9))).toBe(0)
})
