import { expect, test } from 'vitest'
import type { FindingStanding } from '../../src/core/transfer/passRecord.ts'
import { passStanding } from '../../src/core/transfer/passRecord.ts'

test.each([
  [['right', 'told', 'right'], 'right'],
  [['right', 'not known', 'told'], 'not known'],
  [['not known', 'wrong', 'right'], 'wrong'],
] as const)('%j come to %s', (standings: readonly FindingStanding[], whole) => {
  const findings = standings.map((standing) => ({ check: 'frames' as const, standing, says: '' }))
  expect(passStanding(findings)).toBe(whole)
})
