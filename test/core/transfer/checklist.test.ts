import { describe, expect, test } from 'vitest'
import {
  type ChecklistFacts,
  checklist,
  standsInTheWay,
} from '../../../src/core/transfer/checklist.ts'
import { CHECKLIST_NAMES } from '../../../src/core/transfer/override.ts'

const FINE: ChecklistFacts = {
  ...{ cues: 4, unlooked: 0, asksAgreement: true, notAgreed: 0, changedSince: 0 },
  ...{ unmeasured: 0, outside: 0, tolerance: 'EBU R 103 v3', doubtful: 0 },
  ...{ recorded: 'a', taken: 'a', room: 2e9, needed: 1e9, lineUps: 1, overrides: [] },
}

const itemOf = (check: string, change: Partial<ChecklistFacts>) => {
  const item = checklist({ ...FINE, ...change }).find((each) => each.check === check)
  if (!item) throw new Error(`There is no check ${check}`)
  return item
}

test('all is right where all is right, and every check is there', () => {
  const items = checklist(FINE)
  expect(items.map(({ check }) => check)).toEqual(CHECKLIST_NAMES)
  expect(items.map(({ standing }) => standing)).toEqual(CHECKLIST_NAMES.map(() => 'right'))
  expect(standsInTheWay(items)).toEqual([])
})

describe('what is found', () => {
  test.each([
    ['looked', { unlooked: 1 }, 'wrong', '1 cue never came under the line.'],
    ['looked', { unlooked: undefined }, 'not known', 'not known here'],
    ['agreed', { notAgreed: 2, changedSince: 1 }, 'wrong', '2 cues are not agreed, 1 cue changed'],
    ['agreed', { asksAgreement: false, notAgreed: 4 }, 'right', 'asks for no agreement'],
    ['tolerance', { outside: 1, unmeasured: 2 }, 'wrong', '1 cue is outside EBU R 103 v3, 2 not'],
    ['tolerance', { unmeasured: 3 }, 'not known', '3 cues are not measured'],
    ['tolerance', { unmeasured: undefined }, 'not known', 'Nothing was measured'],
    ['boundaries', { doubtful: 1 }, 'wrong', '1 cue begins at a doubtful boundary.'],
    ['scan', { recorded: null }, 'not known', 'no checksum of the scan yet'],
    ['scan', { taken: undefined }, 'not known', 'was not taken again'],
    ['scan', { taken: 'b' }, 'wrong', 'its checksum is another'],
    ['space', { room: 5e8 }, 'wrong', '1.0 GB at most are needed, and there is room for 500.0 MB'],
    ['space', { room: undefined }, 'not known', 'cannot be asked'],
    ['line-up', { lineUps: 0 }, 'wrong', 'No line-up'],
  ] as const)('%s with %j is %s', (check, change, standing, says) => {
    const item = itemOf(check, change)
    expect(item.standing).toBe(standing)
    expect(item.says).toContain(says)
    expect(standsInTheWay(checklist({ ...FINE, ...change })).length).toBe(
      standing === 'right' ? 0 : 1,
    )
  })
})

describe('a reason', () => {
  const reason = (found: string) => ({
    overrides: [
      { check: 'boundaries', found, reason: 'Seen.', at: '2026-11-26T09:00:00Z' },
    ] as const,
  })

  test('holds for just what was found, and lets the pass by', () => {
    const { says } = itemOf('boundaries', { doubtful: 3 })
    const change = { doubtful: 3, ...reason(says) }
    expect(itemOf('boundaries', change).override?.reason).toBe('Seen.')
    expect(standsInTheWay(checklist({ ...FINE, ...change }))).toEqual([])
  })

  test('given for one scan does not hold for another', () => {
    const { says } = itemOf('scan', { taken: 'b'.repeat(64) })
    const given = {
      check: 'scan',
      found: says,
      reason: 'A copy.',
      at: '2026-11-26T09:00:00Z',
    } as const
    const overrides = [given]
    expect(itemOf('scan', { taken: 'b'.repeat(64), overrides }).override).toBe(given)
    expect(itemOf('scan', { taken: 'c'.repeat(64), overrides }).override).toBeUndefined()
  })

  test('does not hold once something else is found, or where nothing is wrong', () => {
    const { says } = itemOf('boundaries', { doubtful: 3 })
    expect(itemOf('boundaries', { doubtful: 4, ...reason(says) }).override).toBeUndefined()
    expect(itemOf('boundaries', reason('No boundary is in doubt.')).override).toBeUndefined()
  })
})
