import { expect, test } from 'vitest'
import { IDENTITY_GRADE } from '../../src/core/colour/grade.ts'
import type { Decision, DecisionList } from '../../src/core/formats/decisionList.ts'
import { writeJob } from '../../src/core/formats/job/writeJob.ts'
import { frame } from '../../src/core/time/frame.ts'
import { rate } from '../../src/core/time/rate.ts'
import { createAppStore } from '../../src/store/appStore.ts'
import { showJob, undo } from '../../src/store/document.ts'
import {
  changeImport,
  filterImport,
  importList,
  importPlanOf,
  leaveImport,
  listedRows,
  offerImport,
  outcomeCounts,
  refuseStart,
} from '../../src/store/importing.ts'
import { tellProblems } from '../../src/store/notices.ts'
import { cuesOf, jobOf } from '../../src/store/queries.ts'
import { sampleJob, sampleReel } from '../support/sampleJob.ts'

const START = sampleReel().startCount

const decision = (from: number, to: number, change: Partial<Decision> = {}): Decision => ({
  name: '',
  source: '',
  sourceSpan: undefined,
  recordSpan: { from: START + from, to: START + to },
  transition: { kind: 'cut', frames: 0 },
  values: {},
  line: undefined,
  foreign: [],
  ...change,
})

const listOf = (...decisions: readonly Decision[]): DecisionList => ({
  format: 'edl',
  title: 'Orlop cut',
  rate: rate(25),
  decisions,
  foreign: [],
  notTaken: [],
})

const DARK = { ...IDENTITY_GRADE, saturation: 0.5 }

/** One matches, one moves by 3 frames, one begins, one lies outside the reel. */
const LIST = listOf(
  decision(0, 103, { values: { grade: DARK } }),
  decision(103, 180),
  decision(180, 250),
  decision(5000, 5100),
)

const setUp = (list: DecisionList = LIST) => {
  const store = createAppStore()
  showJob(store, sampleJob(), 'shelf')
  offerImport(store, 'cut.edl', list)
  const plan = () => {
    const now = importPlanOf(store.getState())
    if (!now) throw new Error('no plan')
    return now
  }
  const firsts = () => cuesOf(store.getState()).map(({ first }): number => first)
  return { store, plan, firsts }
}

test('a list is laid over the job and changes nothing until it is taken', () => {
  const { store, plan, firsts } = setUp()
  expect(outcomeCounts(plan())).toMatchObject({ matches: 1, moves: 1, begins: 1, conflicts: 1 })
  expect(firsts()).toEqual([0, 100, 250, 400])
  leaveImport(store)
  expect(importPlanOf(store.getState())).toBeUndefined()
  expect(jobOf(store.getState())).toEqual(sampleJob())
  expect(store.getState().history?.past).toEqual([])
})

test('taken, it is one step with a name, and undo brings the very same job back', () => {
  const { store, firsts } = setUp()
  expect(importList(store)).toBe(true)
  expect(firsts()).toEqual([0, 103, 180, 250, 400])
  expect(cuesOf(store.getState())[0]?.grade).toEqual(DARK)
  expect(store.getState().history?.past).toHaveLength(1)
  expect(store.getState().history?.past[0]?.label).toBe('Import list')
  expect(store.getState().importing).toBeUndefined()
  expect(store.getState().notice?.says).toBe(
    'Imported cut.edl: 1 cue begun, 1 moved, 1 matched; 1 decision left out. Undo takes it back.',
  )
  undo(store)
  const job = jobOf(store.getState())
  expect(job && writeJob(job)).toBe(writeJob(sampleJob()))
})

test('every choice changes the plan at once, and only a choice makes it anew', () => {
  const { store, plan } = setUp()
  const first = plan()
  expect(plan()).toBe(first)
  changeImport(store, { takesPlaces: false })
  expect(plan().options.takesPlaces).toBe(false)
  expect(outcomeCounts(plan()).moves + outcomeCounts(plan()).begins).toBe(0)
  changeImport(store, { takesPlaces: true, startsAt: frame(10) })
  expect(plan().rows.map((row) => row.first)).toContain(frame(10))
  changeImport(store, { startsAt: null })
  expect(plan().rows).toEqual(first.rows)
})

test('rows are listed by outcome, and all again when a choice changes', () => {
  const { store, plan } = setUp()
  filterImport(store, 'conflicts')
  const listed = () => listedRows(plan(), store.getState().importing?.filter ?? 'all')
  expect(listed().map(({ number }) => number)).toEqual([4])
  changeImport(store, { takesGrades: false })
  expect(listed()).toHaveLength(4)
})

test('a list that the job has already changes nothing and says so', () => {
  const { store } = setUp(listOf(decision(0, 100), decision(100, 250)))
  expect(importList(store)).toBe(true)
  expect(store.getState().history?.past).toEqual([])
  expect(store.getState().notice?.says).toContain('changes nothing')
})

test('another job in its place puts the list away', () => {
  const { store } = setUp()
  showJob(store, sampleJob([0, 50]), 'other')
  expect(store.getState().importing).toBeUndefined()
})

test('without a job no list is laid over anything', () => {
  const store = createAppStore()
  offerImport(store, 'cut.edl', LIST)
  expect(store.getState().importing).toBeUndefined()
  expect(importList(store)).toBe(false)
})

test('nothing is imported while the place it begins on is none', () => {
  const { store } = setUp()
  refuseStart(store, 'Write a timecode.')
  changeImport(store, { takesGrades: false })
  expect(store.getState().importing?.startRefusal).toBe('Write a timecode.')
  expect(importList(store)).toBe(false)
  expect(jobOf(store.getState())).toEqual(sampleJob())
  changeImport(store, { startsAt: frame(0) })
  expect(importList(store)).toBe(true)
})

test('a list that is offered puts earlier news away', () => {
  const { store } = setUp()
  tellProblems(store, [{ code: 'malformed', says: 'It cannot be read.' }])
  offerImport(store, 'cut.edl', LIST)
  expect(store.getState().notice).toBeUndefined()
})
