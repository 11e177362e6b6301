import { expect, test } from 'vitest'
import { cuesOfReel } from '../../src/core/job/cueList.ts'
import { newHistory } from '../../src/core/job/history.ts'
import { frame } from '../../src/core/time/frame.ts'
import type { Verdict } from '../../src/core/tolerance/verdict.ts'
import { checkKeyOf } from '../../src/store/checkKey.ts'
import { standingOf } from '../../src/store/standing.ts'
import { type AppState, INITIAL_STATE } from '../../src/store/state.ts'
import { NO_VERDICTS, type VerdictBook, withVerdict } from '../../src/store/verdictBook.ts'
import { REEL_ID, sampleJob, sampleReel } from '../support/sampleJob.ts'
import { seeded } from '../support/seeded.ts'

const CUES = 40
const job = sampleJob(
  Array.from({ length: CUES }, (_, i) => i * 10),
  (cue, i) => ({ ...cue, ramp: i % 3 === 1 ? 4 : 0 }),
  sampleReel({ frames: CUES * 10 }),
)
const state: AppState = { ...INITIAL_STATE, history: newHistory(job), reelId: REEL_ID }
const SPAN = { low: 0, high: 1 }

const verdictOf = (isInside: boolean): Verdict => ({
  profile: 'ebu-r103-v3',
  isInside,
  r: SPAN,
  g: SPAN,
  b: SPAN,
  y: SPAN,
  worstFrame: frame(0),
  areaOutside: isInside ? 0 : 0.2,
  areaBelow: 0,
  areaAbove: isInside ? 0 : 0.2,
  frames: 10,
  framesOutside: isInside ? 0 : 10,
})

/** The same counted from nothing: an unlike book makes it count again. */
const counted = (verdicts: VerdictBook) => {
  standingOf({ ...state, verdicts: NO_VERDICTS })
  return standingOf({ ...state, verdicts: { entries: verdicts.entries, version: -1 } })
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
