import { expect, test } from 'vitest'
import { censusStanding, pixelDelivery } from '../../../src/core/census/censusStanding.ts'
import { IDENTITY_GRADE } from '../../../src/core/colour/grade.ts'
import { deliverPicture } from '../../../src/core/picture/deliverPicture.ts'
import { type Framing, IDENTITY_FRAMING } from '../../../src/core/picture/framing.ts'
import type { Planes } from '../../../src/core/picture/planes.ts'
import { pictureLevels } from '../../../src/core/tolerance/pictureLevels.ts'
import { EBU_R103_V3, type ToleranceProfile } from '../../../src/core/tolerance/profile.ts'

const SPAN = { low: 0.1, high: 0.9 }
const verdict = (outsideAtLeast: number, outsideAtMost = outsideAtLeast) => ({
  r: SPAN,
  g: SPAN,
  b: SPAN,
  y: SPAN,
  outsideAtLeast,
  outsideAtMost,
  pixels: 1000,
})
const UNFILTERED: ToleranceProfile = { ...EBU_R103_V3, filtered: false }
/** Black has to be lifted: a picture with bars cannot be inside. */
const LIFTED: ToleranceProfile = { ...UNFILTERED, rgb: [0.05, 1], luma: [0.05, 1] }

test.each([
  ['no pixel out is inside, whatever the filter', verdict(0), EBU_R103_V3, 'as-scanned', 'inside'],
  ['and blanked, where black is inside', verdict(0), EBU_R103_V3, 'blanked', 'inside'],
  ['blanked, where black is outside, the frames tell', verdict(0), LIFTED, 'blanked', 'open'],
  ['not blanked, black is no matter', verdict(0), LIFTED, 'as-scanned', 'inside'],
  ['read between pixels, the frames tell', verdict(0), EBU_R103_V3, 'mixed', 'open'],
  [
    'more out than may be, unfiltered, is outside',
    verdict(11),
    UNFILTERED,
    'as-scanned',
    'outside',
  ],
  ['what may be out need not be', verdict(10), UNFILTERED, 'as-scanned', 'open'],
  ['a filter may bring it inside', verdict(400), EBU_R103_V3, 'as-scanned', 'open'],
  ['blanking may leave it out', verdict(400), UNFILTERED, 'blanked', 'open'],
  ['a framing may leave it out', verdict(400), UNFILTERED, 'mixed', 'open'],
  ['a span that may be inside is open', verdict(0, 30), UNFILTERED, 'as-scanned', 'open'],
] as const)('%s', (_, told, profile, delivery, standing) => {
  expect(censusStanding(told, profile, delivery)).toBe(standing)
})

test('pixels are delivered as they are unless a framing or a ramp comes between', () => {
  expect(pixelDelivery(IDENTITY_FRAMING, false)).toBe('as-scanned')
  expect(pixelDelivery({ ...IDENTITY_FRAMING, blanking: -0.25 }, false)).toBe('blanked')
  expect(pixelDelivery(IDENTITY_FRAMING, true)).toBe('mixed')
  for (const change of [{ zoom: 1.01 }, { pan: 0.1 }, { rotation: 1 }, { squeeze: 2 }])
    expect(pixelDelivery({ ...IDENTITY_FRAMING, ...change }, false)).toBe('mixed')
})

test('a zoomed edge leaves limits that every scanned pixel keeps', () => {
  const code = (i: number) => (i % 16 < 8 ? 64 : 940)
  const plane = Uint16Array.from({ length: 256 }, (_, i) => code(i))
  const planes: Planes = {
    width: 16,
    height: 16,
    layout: 'rgb',
    depth: 10,
    samples: [plane, plane, plane],
  }
  const coding = { matrix: 'bt709', range: 'narrow' } as const
  const strict: ToleranceProfile = { ...UNFILTERED, rgb: [0, 1], luma: [0, 1] }
  const outside = (framing: Framing) =>
    pictureLevels(deliverPicture(planes, coding, IDENTITY_GRADE, framing), 'bt709', strict).outside
  expect(outside(IDENTITY_FRAMING)).toBe(0)
  expect(outside({ ...IDENTITY_FRAMING, blanking: 0.5 })).toBe(0)
  expect(outside({ ...IDENTITY_FRAMING, zoom: 1.6 })).toBeGreaterThan(0)
})
