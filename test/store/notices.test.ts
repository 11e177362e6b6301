import { expect, test } from 'vitest'
import type { Problem } from '../../src/core/base/problem.ts'
import { setNote } from '../../src/core/job/commands/setNote.ts'
import { createAppStore } from '../../src/store/appStore.ts'
import { perform, redo, showJob, undo } from '../../src/store/document.ts'
import { tell, tellProblems, tellWith } from '../../src/store/notices.ts'
import { offerRescan, setRescanStage } from '../../src/store/rescan.ts'
import { cueId, sampleJob } from '../support/sampleJob.ts'

const problems = (count: number): Problem[] =>
  Array.from({ length: count }, (_, i) => ({ code: 'malformed', says: `Fault ${i + 1}.` }))

const setUp = () => {
  const store = createAppStore()
  showJob(store, sampleJob(), 'shelf')
  const notice = () => store.getState().notice
  return { store, notice }
}

test('problems are told a line each, and after five how many more there are', () => {
  const { store, notice } = setUp()
  tellProblems(store, problems(1))
  expect(notice()?.says).toBe('Fault 1.')
  tellProblems(store, problems(5))
  expect(notice()?.says.split('\n')).toEqual(problems(5).map(({ says }) => says))
  tellProblems(store, problems(8))
  expect(notice()?.says.split('\n').slice(4)).toEqual(['Fault 5.', 'and 3 more'])
})

test('what was done with something left stays until it is put away', () => {
  const { store, notice } = setUp()
  tellWith(store, 'It is done.', [])
  expect(notice()).toMatchObject({ says: 'It is done.', isProblem: false })
  tellWith(store, 'It is done.', problems(2))
  expect(notice()).toMatchObject({ says: 'It is done.\nFault 1.\nFault 2.', isProblem: true })
})

test('undo and redo put away what is true no more', () => {
  const { store, notice } = setUp()
  perform(store, (job) => setNote(job, cueId(1), 'cold'))
  tell(store, 'Imported. Undo takes it back.')
  undo(store)
  expect(notice()).toBeUndefined()
  tellProblems(store, problems(1))
  redo(store)
  expect(notice()).toBeUndefined()
})

test('another scan that is asked about puts it away, and why it is asked again stays', () => {
  const { store, notice } = setUp()
  tellProblems(store, problems(1))
  offerRescan(store, 'new.mov', 'It differs.', true)
  expect(notice()).toBeUndefined()
  tellProblems(store, problems(1))
  setRescanStage(store, { kind: 'asking' })
  expect(notice()?.says).toBe('Fault 1.')
  setRescanStage(store, { kind: 'looking', at: 'Looking:', progress: undefined })
  expect(notice()).toBeUndefined()
})
