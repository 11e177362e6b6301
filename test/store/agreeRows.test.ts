import { expect, test } from 'vitest'
import { setAgreement } from '../../src/core/job/commands/setAgreement.ts'
import { setGrade } from '../../src/core/job/commands/setGrade.ts'
import { agreeRows, middleFrame, unsaidOf } from '../../src/store/agreeRows.ts'
import { createAppStore } from '../../src/store/appStore.ts'
import { perform, showJob } from '../../src/store/document.ts'
import { SAID } from '../support/sampleAnswer.ts'
import { cueId, sampleJob } from '../support/sampleJob.ts'

const setUp = () => {
  const store = createAppStore()
  const scenes = ['12', '12', '', '12']
  const job = sampleJob(undefined, (cue, i) => ({ ...cue, scene: scenes[i] ?? '' }))
  showJob(store, job, 'key')
  return store
}

test('cues that follow one another in a scene stand under one head', () => {
  const rows = agreeRows(setUp().getState())
  expect(rows.map((row) => (row.kind === 'scene' ? row.cues.length : row.number))).toEqual([
    ...[2, 1, 2],
    ...[1, 3],
    ...[1, 4],
  ])
})

test('what is agreed, changed since or asked is told apart, and only asked changes are left alone', () => {
  const store = setUp()
  perform(store, (job) => setAgreement(job, [1, 2].map(cueId), 'agreed', SAID))
  perform(store, (job) => setAgreement(job, [cueId(3)], 'asked', SAID))
  perform(store, (job) => setGrade(job, [cueId(2)], (grade) => ({ ...grade, saturation: 2 })))
  const state = store.getState()
  const standings = agreeRows(state).flatMap((row) => (row.kind === 'cue' ? [row.standing] : []))
  expect(standings).toEqual(['agreed', 'changed', 'asked', 'open'])
  expect(unsaidOf(state, [1, 2, 3, 4].map(cueId))).toEqual([cueId(2), cueId(4)])
  expect(unsaidOf(state, [cueId(1)])).toEqual([])
})

test('a cue is known by the middle one of its frames', () => {
  const state = setUp().getState()
  const cue = state.history?.job.cues[cueId(2)]
  expect(cue && middleFrame(state, cue)).toBe(174)
})
