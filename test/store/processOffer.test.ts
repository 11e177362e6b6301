import { expect, test } from 'vitest'
import { gradeToCdl } from '../../src/core/colour/cdl.ts'
import { IDENTITY_GRADE } from '../../src/core/colour/grade.ts'
import type { ProcessList } from '../../src/core/process/processList.ts'
import { createAppStore } from '../../src/store/appStore.ts'
import { showJob, undo } from '../../src/store/document.ts'
import { tell } from '../../src/store/notices.ts'
import {
  leaveProcess,
  offerProcess,
  takeProcessAsBase,
  takeProcessAsGrade,
} from '../../src/store/processOffer.ts'
import { cuesOf, reelOf } from '../../src/store/queries.ts'
import { selectCue } from '../../src/store/selection.ts'
import { sampleJob } from '../support/sampleJob.ts'

const GRADE = { ...IDENTITY_GRADE, saturation: 0.5 }

const CDL: ProcessList = {
  name: 'Print look',
  steps: [{ kind: 'cdl', style: 'forward-no-clamp', cdl: gradeToCdl(GRADE) }],
}

const MATRIX: ProcessList = {
  name: 'Scanner',
  steps: [
    {
      kind: 'matrix',
      rows: [
        [1.1, 0, 0],
        [0, 1, 0],
        [0, 0, 0.9],
      ],
      offset: [0, 0, 0],
    },
  ],
}

const setUp = (list: ProcessList) => {
  const store = createAppStore()
  showJob(store, sampleJob(), 'shelf')
  offerProcess(store, 'look.clf', list, [])
  return store
}

test('a list goes after the base as one step, and undo takes it out again', () => {
  const store = setUp(MATRIX)
  expect(store.getState().processOffer?.grade).toBeUndefined()
  takeProcessAsBase(store)
  expect(reelOf(store.getState())?.base.list).toEqual(MATRIX)
  expect(store.getState().processOffer).toBeUndefined()
  expect(store.getState().notice?.says).toContain('base list')
  undo(store)
  expect(reelOf(store.getState())?.base.list).toBeNull()
})

test('what is nothing but a grade can be the grade of the cues selected', () => {
  const store = setUp(CDL)
  const [first, second, third] = cuesOf(store.getState())
  if (first) selectCue(store, first, 'only')
  if (second) selectCue(store, second, 'toggle')
  takeProcessAsGrade(store)
  const saturations = cuesOf(store.getState()).map(({ grade }) => grade.saturation)
  expect(saturations).toEqual([0.5, 0.5, third?.grade.saturation, 1])
  expect(store.getState().history?.past).toHaveLength(1)
})

test('what does more than a grade is not taken as one', () => {
  const store = setUp(MATRIX)
  takeProcessAsGrade(store)
  expect(store.getState().history?.past).toEqual([])
  expect(store.getState().processOffer).toBeDefined()
})

test('left, it changes nothing', () => {
  const store = setUp(CDL)
  leaveProcess(store)
  expect(store.getState().processOffer).toBeUndefined()
  expect(store.getState().history?.past).toEqual([])
})

test('what is offered puts earlier news away', () => {
  const store = createAppStore()
  showJob(store, sampleJob(), 'shelf')
  tell(store, 'Imported.')
  offerProcess(store, 'print.clf', CDL, [])
  expect(store.getState().notice).toBeUndefined()
})
