import { expect, test } from 'vitest'
import { setAgreement } from '../../src/core/job/commands/setAgreement.ts'
import { setGrade } from '../../src/core/job/commands/setGrade.ts'
import { setJobInfo } from '../../src/core/job/commands/setJobInfo.ts'
import { setRamp } from '../../src/core/job/commands/setRamp.ts'
import { splitCue } from '../../src/core/job/commands/splitCue.ts'
import { cuesOfReel } from '../../src/core/job/cueList.ts'
import { newHistory } from '../../src/core/job/history.ts'
import { frame } from '../../src/core/time/frame.ts'
import { COMPOSITE_625 } from '../../src/core/tolerance/profile.ts'
import { createAppStore } from '../../src/store/appStore.ts'
import { censusKeyOf, checkKeyOf } from '../../src/store/checkKey.ts'
import { OUTSIDE } from '../../src/store/cueBits.ts'
import { perform } from '../../src/store/document.ts'
import { recallLooked } from '../../src/store/looked.ts'
import { standingOf } from '../../src/store/standing.ts'
import { type AppState, INITIAL_STATE, type LiveVerdict } from '../../src/store/state.ts'
import { NO_VERDICTS, type VerdictBook, withVerdict } from '../../src/store/verdictBook.ts'
import { SAID } from '../support/sampleAnswer.ts'
import { cueId, REEL_ID, sampleJob, sampleReel } from '../support/sampleJob.ts'
import { verdictOf } from '../support/sampleVerdict.ts'
import { seeded } from '../support/seeded.ts'

const CUES = 40
const job = sampleJob(
  Array.from({ length: CUES }, (_, i) => i * 10),
  (cue, i) => ({ ...cue, ramp: i % 3 === 1 ? 4 : 0 }),
  sampleReel({ frames: CUES * 10 }),
)
const state: AppState = { ...INITIAL_STATE, history: newHistory(job), reelId: REEL_ID }

/** The same counted from nothing: an unlike book makes it count again. */
const counted = (verdicts: VerdictBook) => {
  standingOf({ ...state, verdicts: NO_VERDICTS })
  return standingOf({ ...state, verdicts: { ...verdicts, version: -1 } })
}

test('a verdict more is added to what was counted, as counting all again tells', () => {
  const random = seeded(2)
  const order = cuesOfReel(job, REEL_ID).toSorted(() => random() - 0.5)
  let verdicts = NO_VERDICTS
  standingOf({ ...state, verdicts })
  for (const [i, cue] of order.entries()) {
    const key = checkKeyOf(state, cue)
    if (key === undefined) throw new Error('no key')
    verdicts = withVerdict(verdicts, key, verdictOf(i % 3 > 0), cue.first)
    const standing = standingOf({ ...state, verdicts })
    expect(standing.measured).toBe(i + 1)
    expect(standing.outside).toBe(Math.floor(i / 3) + 1)
    const entries = new Map(verdicts.entries)
    expect(counted({ ...verdicts, entries })).toEqual(standing)
    standingOf({ ...state, verdicts })
  }
})

test('a verdict of what a cue was before it changed counts nothing', () => {
  const [cue] = cuesOfReel(job, REEL_ID)
  if (!cue) throw new Error('no cue')
  const verdicts = withVerdict(NO_VERDICTS, 'of another grade', verdictOf(false), cue.first)
  standingOf({ ...state, verdicts: NO_VERDICTS })
  expect(standingOf({ ...state, verdicts })).toMatchObject({ measured: 0, outside: 0 })
})

test('a book of verdicts begun is not the empty one', () => {
  withVerdict(NO_VERDICTS, 'a', verdictOf(true), frame(0))
  expect(NO_VERDICTS.entries.size).toBe(0)
})

/** A job in a store, with a way to give its cues verdicts. */
const inStore = () => {
  const store = createAppStore()
  store.setState({ history: newHistory(sampleJob()), reelId: REEL_ID, shelfKey: 'outside' })
  const standing = () => standingOf(store.getState())
  const measure = (n: number, isInside: boolean) => {
    const state = store.getState()
    const cue = state.history?.job.cues[cueId(n)]
    const key = cue && checkKeyOf(state, cue)
    if (!cue || key === undefined) throw new Error('no cue')
    const verdicts = withVerdict(state.verdicts, key, verdictOf(isInside), cue.first)
    store.setState({ verdicts })
  }
  const saturate = (n: number, saturation: number) =>
    perform(store, (before) => setGrade(before, [cueId(n)], (grade) => ({ ...grade, saturation })))
  return { store, standing, measure, saturate }
}

test('a cue outside counts as outside while it is changed, until a verdict says otherwise', () => {
  const { standing, measure, saturate } = inStore()
  measure(1, true)
  measure(2, false)
  expect(standing()).toMatchObject({ measured: 2, outside: 1 })
  saturate(2, 0.9)
  expect(standing()).toMatchObject({ measured: 1, outside: 1 })
  saturate(1, 0.9)
  expect(standing()).toMatchObject({ measured: 0, outside: 1 })
  measure(2, true)
  expect(standing()).toMatchObject({ measured: 1, outside: 0 })
})

test('it still does where cues are added meanwhile, and not under another tolerance', () => {
  const { store, standing, measure, saturate } = inStore()
  measure(3, false)
  standing()
  saturate(3, 0.9)
  perform(store, (before) => splitCue(before, REEL_ID, frame(50), cueId(9)))
  expect(standing()).toMatchObject({ outside: 1 })
  expect([...standing().bits].map((bits) => bits & OUTSIDE)).toEqual([0, 0, 0, OUTSIDE, 0])
  perform(store, (before) =>
    setJobInfo(before, (info) => ({ ...info, tolerance: COMPOSITE_625.id })),
  )
  expect(standing()).toMatchObject({ outside: 0 })
})

test('what the colours of a cue tell settles it before it is measured', () => {
  const { store, standing, measure, saturate } = inStore()
  measure(2, false)
  expect(standing().outside).toBe(1)
  saturate(2, 0.9)
  const state = store.getState()
  const cue = state.history?.job.cues[cueId(2)]
  if (!cue) throw new Error('no cue')
  const live = (told: LiveVerdict['standing']) =>
    store.setState({
      live: new Map([
        [
          cue.id,
          {
            grade: cue.grade,
            colours: censusKeyOf(state, cue) ?? '',
            standing: told,
          } as LiveVerdict,
        ],
      ]),
    })
  live('open')
  expect(standing().outside).toBe(1)
  live('inside')
  expect(standing().outside).toBe(0)
  live('outside')
  expect(standing().outside).toBe(1)
})

test('counted change by change, all stand as counted from nothing', () => {
  const { store, standing, measure, saturate } = inStore()
  const random = seeded(7)
  const pick = () => 1 + Math.floor(random() * 4)
  for (let i = 0; i < 120; i++) {
    const kind = Math.floor(random() * 5)
    if (kind === 0) measure(pick(), random() < 0.5)
    if (kind === 1) saturate(pick(), Math.round(random() * 20) / 10)
    if (kind === 2)
      perform(store, (before) => setAgreement(before, [cueId(pick())], 'agreed', SAID))
    if (kind === 3) recallLooked(store, [cueId(pick())])
    if (kind === 4) perform(store, (before) => setRamp(before, [cueId(pick())], pick() - 1))
    const { outside: _, bits, ...counts } = standing()
    const outsideApart = (all: Uint8Array) => [...all].map((each) => each & ~OUTSIDE)
    standingOf(state)
    const { outside: __, bits: bitsAnew, ...anew } = standing()
    expect(counts).toEqual(anew)
    expect(outsideApart(bits)).toEqual(outsideApart(bitsAnew))
  }
})

test('what flashes is entered with a verdict, and the first book stays empty', () => {
  const flashes = { breaches: [], long: [] }
  const quiet = withVerdict(NO_VERDICTS, 'a', verdictOf(true), frame(0))
  expect(quiet.flashes.size).toBe(0)
  const book = withVerdict(quiet, 'b', verdictOf(true), frame(10), flashes)
  expect(book.flashes.get('b')).toBe(flashes)
  expect(NO_VERDICTS.flashes.size).toBe(0)
})
