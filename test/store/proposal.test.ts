import { expect, test } from 'vitest'
import { IDENTITY_GRADE } from '../../src/core/colour/grade.ts'
import { IDENTITY_MATRIX3, type Matrix3 } from '../../src/core/colour/matrix3.ts'
import { PRINT_BASE } from '../../src/core/film/filmBase.ts'
import { setNote } from '../../src/core/job/commands/setNote.ts'
import { createAppStore } from '../../src/store/appStore.ts'
import { perform, showJob, undo } from '../../src/store/document.ts'
import { pickPlace, pickReading, unpickLast } from '../../src/store/picking.ts'
import {
  keepProposal,
  leaveProposal,
  leaveWhenStale,
  offerProposal,
  type Proposal,
  shownBase,
  shownGrade,
  togglePicking,
} from '../../src/store/proposal.ts'
import { currentCue, reelOf } from '../../src/store/queries.ts'
import { movePlayhead, setStep } from '../../src/store/session.ts'
import { cueId, REEL_ID, sampleJob } from '../support/sampleJob.ts'

const GRADE = { ...IDENTITY_GRADE, saturation: 0.8 }
const DYES: Matrix3 = [
  [1.5, 0, 0],
  [0, 1, 0],
  [0, 0, 1],
]

const forCue: Proposal = {
  label: 'Bring inside',
  says: ['Saturation 1.000 → 0.800.'],
  change: { kind: 'grade', cue: cueId(1), grade: GRADE },
}
const forReel: Proposal = {
  label: 'Restore dye',
  says: ['Cyan has kept 67 % of its dye.'],
  change: { kind: 'base', reel: REEL_ID, base: { ...PRINT_BASE, dyes: DYES } },
}

const setUp = () => {
  const store = createAppStore()
  showJob(store, sampleJob(), 'shelf')
  leaveWhenStale(store)
  const now = () => {
    const state = store.getState()
    const [cue, reel] = [currentCue(state), reelOf(state)]
    if (!cue || !reel) throw new Error('no cue')
    return { state, cue, reel, past: state.history?.past.length }
  }
  return { store, now }
}

test('a proposal is shown and changes nothing until it is kept, as one step that undo takes back', () => {
  const { store, now } = setUp()
  offerProposal(store, forCue)
  expect(shownGrade(now().state, now().cue)).toEqual(GRADE)
  expect(now().cue.grade).toEqual(IDENTITY_GRADE)
  expect(keepProposal(store)).toBe(true)
  expect(now().cue.grade).toEqual(GRADE)
  expect(now().past).toBe(1)
  expect(store.getState().history?.past.at(-1)?.label).toBe('Bring inside')
  expect(store.getState().proposal).toBeUndefined()
  undo(store)
  expect(now().cue.grade).toEqual(IDENTITY_GRADE)
})

test('only the cue it is for is shown with it', () => {
  const { store, now } = setUp()
  offerProposal(store, forCue)
  const other = now().state.history?.job.cues[cueId(2)]
  expect(other && shownGrade(now().state, other)).toEqual(IDENTITY_GRADE)
})

test('a base is kept with the rest of the reel as it is', () => {
  const { store, now } = setUp()
  offerProposal(store, forReel)
  expect(shownBase(now().state, now().reel).dyes).toEqual(DYES)
  expect(now().reel.base.dyes).toEqual(IDENTITY_MATRIX3)
  const before = now().reel
  expect(keepProposal(store)).toBe(true)
  expect(now().reel).toEqual({ ...before, base: { ...before.base, dyes: DYES } })
})

test('leaving it goes back to what the job says, and ends picking', () => {
  const { store, now } = setUp()
  togglePicking(store, 'neutral')
  pickPlace(store, { x: 0.5, y: 0.5 })
  offerProposal(store, forCue)
  leaveProposal(store)
  expect(store.getState().proposal).toBeUndefined()
  expect(store.getState().pointing).toMatchObject({ mode: 'read', picks: [] })
  expect(now().past).toBe(0)
})

test('what says that nothing is changed cannot be kept', () => {
  const { store } = setUp()
  offerProposal(store, { ...forCue, change: { kind: 'none', isLooking: false } })
  expect(keepProposal(store)).toBe(false)
})

test('a change of the job, an undo, another cue or another step leave it', () => {
  const { store } = setUp()
  perform(store, (job) => setNote(job, cueId(2), 'first'))
  const leavers: readonly (() => unknown)[] = [
    () => perform(store, (job) => setNote(job, cueId(1), 'another')),
    () => undo(store),
    () => movePlayhead(store, 120),
    () => setStep(store, 'hand-over'),
  ]
  for (const leave of leavers) {
    offerProposal(store, forCue)
    leave()
    expect(store.getState().proposal).toBeUndefined()
  }
})

test('moving inside the cue keeps it, and one for the reel outlasts its cues', () => {
  const { store } = setUp()
  offerProposal(store, forCue)
  movePlayhead(store, 20)
  expect(store.getState().proposal).toBe(forCue)
  togglePicking(store, 'dye')
  offerProposal(store, forReel)
  movePlayhead(store, 300)
  expect(store.getState().proposal).toBe(forReel)
})

test('another cue leaves the places picked in this one', () => {
  const { store } = setUp()
  togglePicking(store, 'neutral')
  pickPlace(store, { x: 0.5, y: 0.5 })
  movePlayhead(store, 120)
  expect(store.getState().pointing).toMatchObject({ mode: 'neutral', picks: [] })
})

test('no more places than the thing takes: the first goes for one more', () => {
  const { store } = setUp()
  const places = [0, 1, 2, 3].map((n) => ({ x: n / 10, y: 0.5 }))
  for (const place of places) pickPlace(store, place)
  expect(store.getState().pointing.picks).toEqual([])
  togglePicking(store, 'neutral')
  for (const place of places) pickPlace(store, place)
  expect(store.getState().pointing.picks).toEqual(places.slice(1))
  unpickLast(store)
  expect(store.getState().pointing.picks).toEqual(places.slice(1, 3))
})

test('the place that is read can be picked, so that a key does what a press does', () => {
  const { store } = setUp()
  togglePicking(store, 'neutral')
  const reading = { x: 0.2, y: 0.7 }
  store.setState(({ pointing }) => ({ pointing: { ...pointing, reading } }))
  pickReading(store)
  expect(store.getState().pointing.picks).toEqual([reading])
  expect(store.getState().pointing.picks[0]).not.toBe(reading)
})

test('picking again for the same thing ends it', () => {
  const { store } = setUp()
  togglePicking(store, 'neutral')
  togglePicking(store, 'neutral')
  expect(store.getState().pointing.mode).toBe('read')
})
