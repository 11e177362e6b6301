import fc from 'fast-check'
import { expect, test } from 'vitest'
import { agreementOf } from '../../../src/core/agreement/agreementOf.ts'
import { cueLook, lookSum } from '../../../src/core/agreement/cueLook.ts'
import { applyChange, cueChange, invertChange } from '../../../src/core/job/change.ts'
import { cuesOfReel } from '../../../src/core/job/cueList.ts'
import type { Cue, Job, JobInfo, Reel } from '../../../src/core/job/job.ts'
import { frame } from '../../../src/core/time/frame.ts'
import { rate } from '../../../src/core/time/rate.ts'
import { toleranceOf } from '../../../src/core/tolerance/findProfile.ts'
import { packAnswer } from '../../support/sampleAnswerFile.ts'
import { cueId, REEL_ID, sampleJob } from '../../support/sampleJob.ts'

/** Cues 1 to 4, all agreed; cue 3 ramps over 10 frames from cue 2. */
const agreedJob = (): Job => {
  const job = sampleJob()
  const edit = (n: number, change: (cue: Cue) => Partial<Cue>, on: Job): Job => {
    const cue = on.cues[cueId(n)]
    if (!cue) throw new Error('no such cue')
    return { ...on, cues: { ...on.cues, [cue.id]: { ...cue, ...change(cue) } } }
  }
  const other = { name: 'B', grade: { ...packAnswer(job, cueId(1)).look.grade, saturation: 0.5 } }
  let made = edit(3, () => ({ ramp: 10 }), job)
  for (const n of [1, 2, 3, 4]) made = edit(n, () => ({ alternates: [other] }), made)
  const looked = made
  for (const n of [1, 2, 3, 4])
    made = edit(n, () => ({ answers: [packAnswer(looked, cueId(n))] }), made)
  return made
}

const JOB = agreedJob()
const ALL = [1, 2, 3, 4]

const stale = (job: Job): readonly number[] =>
  ALL.filter((n) => {
    const cue = job.cues[cueId(n)]
    return cue && agreementOf(job, cue) !== 'agreed'
  })

const sums = (job: Job): readonly string[] => {
  const reel = job.reels[REEL_ID]
  if (!reel) throw new Error('no reel')
  const ground = { reel, cues: cuesOfReel(job, REEL_ID), profile: toleranceOf(job.info.job) }
  return ground.cues.map((_, index) => {
    const look = cueLook(ground, index)
    if (!look) throw new Error('no look')
    return lookSum(look)
  })
}

const onCue = (n: number, change: (cue: Cue) => Partial<Cue>): Job => {
  const cue = JOB.cues[cueId(n)]
  if (!cue) throw new Error('no such cue')
  return { ...JOB, cues: { ...JOB.cues, [cue.id]: { ...cue, ...change(cue) } } }
}

const onReel = (change: (reel: Reel) => Partial<Reel>): Job => {
  const reel = JOB.reels[REEL_ID]
  if (!reel) throw new Error('no reel')
  return { ...JOB, reels: { ...JOB.reels, [REEL_ID]: { ...reel, ...change(reel) } } }
}

const onInfo = (change: Partial<JobInfo>): Job => ({
  ...JOB,
  info: { job: { ...JOB.info.job, ...change } },
})

/** Of whom a cue's own values are: itself, and cue 3, which ramps from cue 2. */
const shownBy = (n: number): readonly number[] => (n === 2 ? [2, 3] : [n])

const channel = fc.constantFrom(0, 1, 2)
const step = fc.double({ min: 1e-6, max: 0.5, noNaN: true })
const cueNumber = fc.constantFrom(...ALL)

const gradeEdit = fc
  .record({ n: cueNumber, c: channel, by: step, field: fc.constantFrom('lift', 'gamma', 'gain') })
  .map(({ n, c, by, field }) => ({
    job: onCue(n, ({ grade }) => {
      const name = field as 'lift' | 'gamma' | 'gain'
      const [r, g, b] = grade[name].map((value, at) => (at === c ? value + by : value))
      return { grade: { ...grade, [name]: [r, g, b] } }
    }),
    voids: shownBy(n),
  }))

const saturationEdit = fc.record({ n: cueNumber, by: step }).map(({ n, by }) => ({
  job: onCue(n, ({ grade }) => ({ grade: { ...grade, saturation: grade.saturation + by } })),
  voids: shownBy(n),
}))

const framingEdit = fc
  .record({
    n: cueNumber,
    by: step,
    field: fc.constantFrom('zoom', 'pan', 'tilt', 'rotation', 'squeeze', 'blanking'),
  })
  .map(({ n, by, field }) => ({
    job: onCue(n, ({ framing }) => ({
      framing: { ...framing, [field]: framing[field as 'zoom'] + by },
    })),
    voids: shownBy(n),
  }))

/** Moving a cue's beginning moves the end of the one before too. */
const beginningEdit = fc
  .record({ n: fc.constantFrom(2, 3, 4), by: fc.integer({ min: 1, max: 50 }) })
  .map(({ n, by }) => ({
    job: onCue(n, ({ first }) => ({ first: frame(first + by) })),
    voids: [n - 1, n],
  }))

const rampEdit = fc
  .record({ n: fc.constantFrom(2, 3, 4), by: fc.integer({ min: 1, max: 20 }) })
  .map(({ n, by }) => ({ job: onCue(n, ({ ramp }) => ({ ramp: ramp + by })), voids: [n] }))

const shapeEdit = cueNumber.map((n) => ({
  job: onCue(n, () => ({ rampShape: 'eased' })),
  voids: n === 3 ? [3] : [],
}))

const voidsAll = fc.constantFrom(
  onReel(({ base }) => ({ base: { ...base, scan: 'negative' } })),
  onReel(({ base }) => ({ base: { ...base, clear: [0.1, 0, 0] } })),
  onReel(({ base }) => ({ base: { ...base, gamma: [0.6, 0.6, 0.7] } })),
  onReel(({ base }) => ({
    base: {
      ...base,
      list: { name: 'x', steps: [{ kind: 'range', low: [0, 0], high: [1, 1], clamps: true }] },
    },
  })),
  onReel(({ media }) => ({ media: { ...media, bytes: media.bytes + 1 } })),
  onReel(({ media }) => ({ media: { ...media, width: 1440 } })),
  onReel(({ media }) => ({ media: { ...media, height: 1088 } })),
  onReel(({ media }) => ({ media: { ...media, displayAspect: 4 / 3 } })),
  onReel(({ media }) => ({ media: { ...media, depth: 10 } })),
  onReel(({ media }) => ({ media: { ...media, layout: '422' } })),
  onReel(({ media }) => ({ media: { ...media, matrix: 'bt601' } })),
  onReel(({ media }) => ({ media: { ...media, range: 'full' } })),
  onInfo({
    tolerance: 'house-x',
    profiles: [{ ...toleranceOf(JOB.info.job), id: 'house-x', area: 0.02 }],
  }),
)

const voidsNone = fc.constantFrom(
  onInfo({ title: 'Another' }),
  onInfo({ asksAgreement: true }),
  onInfo({
    tolerance: 'house-x',
    profiles: [{ ...toleranceOf(JOB.info.job), id: 'house-x', name: 'By another name' }],
  }),
  onReel(() => ({ name: 'Another' })),
  onReel(() => ({ rate: rate(24) })),
  onReel(() => ({ startCount: 0 })),
  onReel(() => ({ gauge: '35mm-4perf' as Reel['gauge'] })),
  onReel(({ media }) => ({ media: { ...media, name: 'another.mov', codec: 'VP9' } })),
  onReel(({ media }) => ({ media: { ...media, checksum: 'a'.repeat(64) } })),
  ...ALL.flatMap((n) => [
    onCue(n, () => ({ note: 'Another.' })),
    onCue(n, () => ({ scene: '12' })),
    onCue(n, () => ({ gradeName: 'C' })),
    onCue(n, () => ({ alternates: [] })),
    onCue(n, () => ({ boundary: { kind: 'by-hand', confidence: 1 } })),
  ]),
)

const anyEdit = fc.oneof(
  ...[gradeEdit, saturationEdit, framingEdit, beginningEdit, rampEdit, shapeEdit],
  voidsAll.map((job) => ({ job, voids: ALL })),
  voidsNone.map((job) => ({ job, voids: [] as readonly number[] })),
)

test('every cue is agreed to begin with', () => {
  expect(stale(JOB)).toEqual([])
})

test('a changed field voids just the agreements whose pictures it decides', () => {
  fc.assert(
    fc.property(anyEdit, ({ job, voids }) => {
      expect(stale(job)).toEqual(voids)
    }),
    { numRuns: 2000 },
  )
})

test('an edit and its undo leave every checksum the same', () => {
  const before = sums(JOB)
  fc.assert(
    fc.property(fc.oneof(gradeEdit, saturationEdit, framingEdit, beginningEdit), ({ job }) => {
      const change = cueChange(Object.values<Cue>(JOB.cues), Object.values<Cue>(job.cues))
      const edited = applyChange(JOB, change)
      expect(sums(edited)).not.toEqual(before)
      const undone = applyChange(edited, invertChange(change))
      expect(sums(undone)).toEqual(before)
      expect(stale(undone)).toEqual([])
    }),
    { numRuns: 300 },
  )
})
