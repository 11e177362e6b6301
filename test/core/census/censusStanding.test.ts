import { expect, test } from 'vitest'
import { censusStanding } from '../../../src/core/census/censusStanding.ts'
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
  ['no pixel out is inside, whatever the filter', verdict(0), EBU_R103_V3, true, 'inside'],
  ['and framed, where black is inside', verdict(0), EBU_R103_V3, false, 'inside'],
  ['framed, where black is outside, the frames tell', verdict(0), LIFTED, false, 'open'],
  ['not framed, black is no matter', verdict(0), LIFTED, true, 'inside'],
  ['more out than may be, unfiltered, is outside', verdict(11), UNFILTERED, true, 'outside'],
  ['what may be out need not be', verdict(10), UNFILTERED, true, 'open'],
  ['a filter may bring it inside', verdict(400), EBU_R103_V3, true, 'open'],
  ['a framing may leave it out', verdict(400), UNFILTERED, false, 'open'],
  ['a span that may be inside is open', verdict(0, 30), UNFILTERED, true, 'open'],
] as const)('%s', (_, told, profile, isWhole, standing) => {
  expect(censusStanding(told, profile, isWhole)).toBe(standing)
})
