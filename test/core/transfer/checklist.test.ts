import { describe, expect, test } from 'vitest'
import {
  type ChecklistFacts,
  checklist,
  standsInTheWay,
} from '../../../src/core/transfer/checklist.ts'
import { CHECKLIST_NAMES, type ChecklistName } from '../../../src/core/transfer/override.ts'
import { cueId } from '../../support/sampleJob.ts'

const ids = (...cues: readonly number[]) => cues.map(cueId)

const FINE: ChecklistFacts = {
  ...{ cues: 4, unlooked: [], asksAgreement: true, notAgreed: [], changedSince: [] },
  ...{ unmeasured: [], outside: [], tolerance: 'EBU R 103 v3', doubtful: [] },
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
    ['looked', { unlooked: ids(1) }, 'wrong', '1 cue never came under the line.'],
    ['looked', { unlooked: undefined }, 'not known', 'not known here'],
    [
      'agreed',
      { notAgreed: ids(1, 2), changedSince: ids(1) },
      'wrong',
      '2 cues are not agreed, 1 cue changed',
    ],
    [
      'agreed',
      { asksAgreement: false, notAgreed: ids(1, 2, 3, 4) },
      'right',
      'asks for no agreement',
    ],
    [
      'tolerance',
      { outside: ids(1), unmeasured: ids(1, 2) },
      'wrong',
      '1 cue is outside EBU R 103 v3, 2 not',
    ],
    ['tolerance', { unmeasured: ids(1, 2, 3) }, 'not known', '3 cues are not measured'],
    ['tolerance', { unmeasured: undefined }, 'not known', 'Nothing was measured'],
    ['boundaries', { doubtful: ids(1) }, 'wrong', '1 cue begins at a doubtful boundary.'],
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
  const reasonFor = (check: ChecklistName, change: Partial<ChecklistFacts>) => {
    const { says, about } = itemOf(check, change)
    const given = { check, found: says, about, reason: 'Seen.', at: '2026-11-26T09:00:00Z' }
    return { overrides: [given] }
  }

  test('holds for what was found, and lets the pass by', () => {
    const change = {
      doubtful: ids(1, 2, 3),
      ...reasonFor('boundaries', { doubtful: ids(1, 2, 3) }),
    }
    expect(itemOf('boundaries', change).override?.reason).toBe('Seen.')
    expect(standsInTheWay(checklist({ ...FINE, ...change }))).toEqual([])
  })

  test.each([
    ['looked', 'unlooked'],
    ['agreed', 'notAgreed'],
    ['agreed', 'changedSince'],
    ['tolerance', 'outside'],
    ['tolerance', 'unmeasured'],
    ['boundaries', 'doubtful'],
  ] as const)('on %s holds for the cues it was given for and for no other (%s)', (check, fact) => {
    const given = reasonFor(check, { [fact]: ids(1, 2) })
    const isHeld = (change: Partial<ChecklistFacts>) =>
      itemOf(check, { ...given, ...change }).override !== undefined
    expect(isHeld({ [fact]: ids(1, 2) })).toBe(true)
    expect(isHeld({ [fact]: ids(2) })).toBe(true)
    expect(isHeld({ [fact]: ids(1, 3) })).toBe(false)
    expect(isHeld({ [fact]: ids(3) })).toBe(false)
    expect(isHeld({})).toBe(false)
  })

  test('given for cues not measured does not hold once they are found outside', () => {
    const given = reasonFor('tolerance', { unmeasured: ids(1) })
    expect(itemOf('tolerance', { ...given, outside: ids(1) }).override).toBeUndefined()
    const other = { unmeasured: ids(1), tolerance: 'House' }
    expect(itemOf('tolerance', { ...given, ...other }).override).toBeUndefined()
  })

  test('given for cues not agreed does not hold once one is changed since', () => {
    const given = reasonFor('agreed', { notAgreed: ids(1) })
    expect(itemOf('agreed', { ...given, changedSince: ids(1) }).override).toBeUndefined()
  })

  test('given for one scan does not hold for another', () => {
    const given = reasonFor('scan', { taken: 'b'.repeat(64) })
    expect(itemOf('scan', { ...given, taken: 'b'.repeat(64) }).override).toBeDefined()
    expect(itemOf('scan', { ...given, taken: 'c'.repeat(64) }).override).toBeUndefined()
    expect(itemOf('scan', { ...given, taken: undefined }).override).toBeUndefined()
  })
})
