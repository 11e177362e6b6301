import { expect, test } from 'vitest'
import { setAgreement } from '../../src/core/job/commands/setAgreement.ts'
import { setGrade } from '../../src/core/job/commands/setGrade.ts'
import { createAppStore } from '../../src/store/appStore.ts'
import { NEEDING } from '../../src/store/cueBits.ts'
import { perform, showJob } from '../../src/store/document.ts'
import { recallLooked } from '../../src/store/looked.ts'
import { isAnyNeeding, needWords, nextCueWith } from '../../src/store/nextNeeding.ts'
import { movePlayhead } from '../../src/store/session.ts'
import { SAID } from '../support/sampleAnswer.ts'
import { cueId, sampleJob } from '../support/sampleJob.ts'

const setUp = () => {
  const store = createAppStore()
  showJob(store, sampleJob(), 'shelf')
  recallLooked(store, [1, 2, 3, 4].map(cueId))
  const next = () => nextCueWith(store.getState(), NEEDING)?.id
  return { store, next }
}

test('nothing needs a person where all were looked at and nothing is amiss', () => {
  const { store, next } = setUp()
  expect(next()).toBeUndefined()
  expect(isAnyNeeding(store.getState())).toBe(false)
})

test('what was changed since and what changes are asked of is come to in turn, round the end', () => {
  const { store, next } = setUp()
  perform(store, (job) => setAgreement(job, [cueId(1)], 'agreed', SAID))
  perform(store, (job) => setGrade(job, [cueId(1)], (grade) => ({ ...grade, saturation: 0.5 })))
  perform(store, (job) => setAgreement(job, [cueId(3)], 'asked', SAID))
  expect(isAnyNeeding(store.getState())).toBe(true)
  expect(next()).toBe(cueId(3))
  movePlayhead(store, 260)
  expect(next()).toBe(cueId(1))
  const first = nextCueWith(store.getState(), NEEDING)
  if (!first) throw new Error('none needs me')
  expect(needWords(store.getState(), first)).toBe('Cue 1: it was changed since it was agreed.')
})

test('the only one that needs a person is found though the line is on it', () => {
  const { store, next } = setUp()
  perform(store, (job) => setAgreement(job, [cueId(2)], 'asked', SAID))
  movePlayhead(store, 150)
  expect(next()).toBe(cueId(2))
})
