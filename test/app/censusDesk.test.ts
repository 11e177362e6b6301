import { expect, test } from 'vitest'
import { createCensusDesk } from '../../src/app/censusDesk.ts'
import { buildCensus } from '../../src/core/census/buildCensus.ts'
import { seenSpans } from '../../src/core/census/seenSpans.ts'
import { createColourTally } from '../../src/core/census/tallyColours.ts'
import { IDENTITY_GRADE } from '../../src/core/colour/grade.ts'
import { setFraming } from '../../src/core/job/commands/setFraming.ts'
import { setGrade } from '../../src/core/job/commands/setGrade.ts'
import type { Job } from '../../src/core/job/job.ts'
import { createAppStore } from '../../src/store/appStore.ts'
import { censusKeyOf, liveVerdictOf } from '../../src/store/checkKey.ts'
import { perform, showJob, undo } from '../../src/store/document.ts'
import { leaveProposal, offerProposal } from '../../src/store/proposal.ts'
import { currentCue } from '../../src/store/queries.ts'
import { seeded, shadedPlanes } from '../kernel/randomPictures.ts'
import { REEL_ID, sampleJob } from '../support/sampleJob.ts'

/** A census of another random picture each. */
const censusOf = (seed: number) => {
  const tally = createColourTally('narrow')
  const planes = shadedPlanes(seeded(seed), '420', 8, 40, 30)
  const zoomed = { zoom: 1 + seed, pan: 0, tilt: 0, rotation: 0, squeeze: 1, blanking: 0 }
  tally.add(planes, seenSpans(zoomed, 40, 30))
  const counted = tally.tally()
  if (!counted) throw new Error('no colours')
  return buildCensus(counted, { matrix: 'bt709', range: 'narrow' })
}

const setUp = () => {
  const store = createAppStore()
  const desk = createCensusDesk(store, () => Promise.reject(new Error('no kernel here')))
  showJob(store, sampleJob(), 'shelf')
  store.setState({ reelId: REEL_ID })
  const cue = () => {
    const current = currentCue(store.getState())
    if (!current) throw new Error('no cue')
    return current
  }
  const live = () => liveVerdictOf(store.getState(), cue())
  const keep = (seed: number) => {
    const key = censusKeyOf(store.getState(), cue())
    if (key === undefined) throw new Error('no key')
    desk.keep(key, censusOf(seed))
  }
  const change = (edit: (job: Job) => ReturnType<typeof setGrade>) =>
    perform(store, edit, undefined)
  return { store, desk, cue, live, keep, change }
}

test('a live verdict follows the grade', () => {
  const { cue, live, keep, change } = setUp()
  expect(live()).toBeUndefined()
  keep(0)
  const before = live()
  expect(before?.verdict.pixels).toBe(1200)
  change((job) => setGrade(job, [cue().id], (grade) => ({ ...grade, gain: [2, 2, 2] })))
  expect(live()?.verdict.y.high).toBeGreaterThan(before?.verdict.y.high ?? 9)
})

test('a framing has colours of its own, and undoing it brings the old ones back', () => {
  const { store, cue, live, keep, change } = setUp()
  keep(0)
  const before = live()?.verdict
  change((job) => setFraming(job, [cue().id], (framing) => ({ ...framing, zoom: 2 })))
  expect(live()).toBeUndefined()
  keep(1)
  const zoomed = live()?.verdict
  expect(zoomed?.pixels).toBeLessThan(1200)
  undo(store)
  expect(live()?.verdict).toEqual(before)
})

test('a live verdict is that of the proposed grade while it is shown, and goes back when it is left', () => {
  const { store, cue, live, keep } = setUp()
  keep(0)
  const before = live()?.verdict
  const grade = { ...IDENTITY_GRADE, gain: [2, 2, 2] } as const
  offerProposal(store, {
    label: 'Bring inside',
    says: [],
    change: { kind: 'grade', cue: cue().id, grade },
  })
  expect(live()?.grade).toEqual(grade)
  expect(live()?.verdict.y.high).toBeGreaterThan(before?.y.high ?? 9)
  leaveProposal(store)
  expect(live()?.verdict).toEqual(before)
})

test('colours are waited for, and given up where nobody waits any more', async () => {
  const { store, desk, cue, keep } = setUp()
  const key = censusKeyOf(store.getState(), cue())
  if (key === undefined) throw new Error('no key')
  const stop = new AbortController()
  const given = desk.whenKept(key, new AbortController().signal)
  const leftAlone = desk.whenKept(key, stop.signal)
  stop.abort()
  await expect(leftAlone).rejects.toThrow()
  keep(0)
  expect((await given)?.pixels).toBe(1200)
  expect(desk.get(key)).toBe(await given)
})
