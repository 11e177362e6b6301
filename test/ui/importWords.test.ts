import { expect, it } from 'vitest'
import type { ImportRow } from '../../src/core/conform/importPlan.ts'
import { rate } from '../../src/core/time/rate.ts'
import { changesText, spanText } from '../../src/ui/import/importWords.ts'
import { decision, list } from '../support/decisionLists.ts'
import { sampleReel } from '../support/sampleJob.ts'

it('says what a row changes, that nothing does, and nothing of what is left out', () => {
  const row = (outcome: ImportRow['outcome'], changes: ImportRow['changes']): ImportRow => ({
    number: 1,
    decision: decision(),
    outcome,
    cue: undefined,
    first: undefined,
    says: '',
    changes,
  })
  expect(changesText(row('matches', ['grade', 'note', 'name']))).toBe('grade, note, grade name')
  expect(changesText(row('matches', []))).toBe('nothing changes')
  expect(changesText(row('conflicts', []))).toBe('')
})

it('writes the labels of a list as that list counts', () => {
  const span = { from: 1_078_920, to: 1_079_000 }
  const ntsc = rate(30_000, 1001)
  const reel = sampleReel()
  const labels = (isDropFrame: boolean) =>
    spanText(span, list([], { rate: ntsc, isDropFrame }), reel)?.from
  expect([labels(true), labels(false)]).toEqual(['10:00:00;00', '09:59:24:00'])
})
