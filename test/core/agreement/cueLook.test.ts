import fc from 'fast-check'
import { expect, it } from 'vitest'
import { agreementOf } from '../../../src/core/agreement/agreementOf.ts'
import { lookSum } from '../../../src/core/agreement/cueLook.ts'
import { lookChanges } from '../../../src/core/agreement/lookChanges.ts'
import type { FilmBase } from '../../../src/core/film/filmBase.ts'
import { readJob } from '../../../src/core/formats/job/readJob.ts'
import { writeJob } from '../../../src/core/formats/job/writeJob.ts'
import { applyChange, type Change, invertChange } from '../../../src/core/job/change.ts'
import { setAgreement } from '../../../src/core/job/commands/setAgreement.ts'
import { cuesOfReel } from '../../../src/core/job/cueList.ts'
import type { Cue, Job, JobInfo, Media, Reel } from '../../../src/core/job/job.ts'
import { frame } from '../../../src/core/time/frame.ts'
import { EBU_R103_V3 } from '../../../src/core/tolerance/profile.ts'
import { SAID } from '../../support/sampleAnswer.ts'
import { packAnswer } from '../../support/sampleAnswerFile.ts'
import { cueId, REEL_ID, sampleJob, sampleReel } from '../../support/sampleJob.ts'

/** Cue 3 ramps from cue 2; the others begin on their frame. */
const PLAIN = sampleJob([0, 100, 250, 400], (cue, i) => ({ ...cue, ramp: i === 2 ? 12 : 0 }))

const AGREED = (() => {
  const ids = [1, 2, 3, 4].map(cueId)
  const made = setAgreement(PLAIN, ids, 'agreed', SAID)
  if (!made.ok) throw new Error('not agreed')
  return applyChange(PLAIN, made.value.change)
})()

const voided = (job: Job): readonly number[] =>
  cuesOfReel(job, REEL_ID).flatMap((cue, i) => (agreementOf(job, cue) === 'agreed' ? [] : [i + 1]))

const cueOf = (n: number): Cue => {
  const cue = AGREED.cues[cueId(n)]
  if (!cue) throw new Error('no cue')
  return cue
}
const withCue = (n: number, edit: (cue: Cue) => Partial<Cue>): Change => {
  const cue = cueOf(n)
  return {
    cues: { added: {}, updated: { [cue.id]: [cue, { ...cue, ...edit(cue) }] }, removed: {} },
  }
}
const withReel = (edit: (reel: Reel) => Partial<Reel>): Change => {
  const reel = AGREED.reels[REEL_ID] ?? sampleReel()
  const to = { ...reel, ...edit(reel) }
  return { reels: { added: {}, updated: { [REEL_ID]: [reel, to] }, removed: {} } }
}
const withMedia = (change: Partial<Media>) =>
  withReel(({ media }) => ({ media: { ...media, ...change } }))
const withBase = (change: Partial<FilmBase>) =>
  withReel(({ base }) => ({ base: { ...base, ...change } }))
const withInfo = (change: Partial<JobInfo>): Change => {
  const { job: info } = AGREED.info
  return { info: { added: {}, updated: { job: [info, { ...info, ...change }] }, removed: {} } }
}

const HOUSE = { ...EBU_R103_V3, id: 'house-1', name: 'House', source: 'ours' }
const STEPS = [{ kind: 'range', low: [0, 0.1], high: null, clamps: true }] as const
const ALL = [1, 2, 3, 4]

it.each<[string, Change, readonly number[]]>([
  ['lift', withCue(1, ({ grade }) => ({ grade: { ...grade, lift: [0.001, 0, 0] } })), [1]],
  ['gamma', withCue(1, ({ grade }) => ({ grade: { ...grade, gamma: [1, 1.001, 1] } })), [1]],
  ['gain', withCue(1, ({ grade }) => ({ grade: { ...grade, gain: [1, 1, 1.001] } })), [1]],
  ['saturation', withCue(1, ({ grade }) => ({ grade: { ...grade, saturation: 1.001 } })), [1]],
  [
    'what another ramps from',
    withCue(2, ({ grade }) => ({ grade: { ...grade, saturation: 2 } })),
    [2, 3],
  ],
  [
    'framing another ramps from',
    withCue(2, ({ framing }) => ({ framing: { ...framing, pan: 0.1 } })),
    [2, 3],
  ],
  ['zoom', withCue(4, ({ framing }) => ({ framing: { ...framing, zoom: 1.001 } })), [4]],
  ['blanking', withCue(4, ({ framing }) => ({ framing: { ...framing, blanking: 0.1 } })), [4]],
  ['ramp', withCue(4, () => ({ ramp: 1 })), [4]],
  ['length of a ramp', withCue(3, () => ({ ramp: 13 })), [3]],
  ['shape of a ramp', withCue(3, () => ({ rampShape: 'eased' })), [3]],
  ['beginning', withCue(4, () => ({ first: frame(401) })), [3, 4]],
  ['kind of scan', withBase({ scan: 'negative' }), ALL],
  ['clear film', withBase({ clear: [0.1, 0, 0] }), ALL],
  ['gamma of the film', withBase({ gamma: [0.6, 0.7, 0.6] }), ALL],
  [
    'dyes',
    withBase({
      dyes: [
        [1, 0, 0],
        [0, 1, 0.01],
        [0, 0, 1],
      ],
    }),
    ALL,
  ],
  ['base list', withBase({ list: { name: 'a', steps: STEPS } }), ALL],
  ['size of the scan', withMedia({ bytes: 5 }), ALL],
  ['width', withMedia({ width: 1918 }), ALL],
  ['pixel shape', withMedia({ displayAspect: 4 / 3 }), ALL],
  ['matrix', withMedia({ matrix: 'bt601' }), ALL],
  ['range', withMedia({ range: 'full' }), ALL],
  ['tolerance', withInfo({ tolerance: 'narrow-range' }), ALL],
  ['a limit', withInfo({ tolerance: 'house-1', profiles: [{ ...HOUSE, area: 0.02 }] }), ALL],
  ['length of the reel', withReel(() => ({ frames: 499 })), [4]],
  ['note', withCue(1, () => ({ note: 'x' })), []],
  ['scene mark', withCue(1, () => ({ scene: 'x' })), []],
  ['alternates', withCue(1, ({ grade }) => ({ alternates: [{ name: 'x', grade }] })), []],
  ['name of the grade', withCue(1, () => ({ gradeName: 'x' })), []],
  ['shape of no ramp', withCue(1, () => ({ rampShape: 'eased' })), []],
  [
    'how the beginning was found',
    withCue(2, () => ({ boundary: { kind: 'by-hand', confidence: 1 } })),
    [],
  ],
  ['name of the reel', withReel(() => ({ name: 'x' })), []],
  ['rate', withReel(() => ({ rate: { num: 24, den: 1 } as Reel['rate'] })), []],
  ['name of the file', withMedia({ name: 'x.mov' }), []],
  ['a checksum that was first taken', withMedia({ checksum: 'a'.repeat(64) }), []],
  ['name of the tolerance', withInfo({ tolerance: 'house-1', profiles: [HOUSE] }), []],
  ['title', withInfo({ title: 'x' }), []],
])(
  'a change of %s voids just the agreements it decides, and its undo brings them back',
  (_, change, expected) => {
    const after = applyChange(AGREED, change)
    expect(voided(after)).toEqual(expected)
    const back = applyChange(after, invertChange(change))
    expect(voided(back)).toEqual([])
    for (const n of ALL) {
      const [was, now] = [packAnswer(AGREED, cueId(n)), packAnswer(back, cueId(n))]
      expect(now.sha256).toBe(was.sha256)
      const { look } = packAnswer(after, cueId(n))
      expect(lookChanges(was.look, look).length > 0).toBe(expected.includes(n))
    }
  },
)

it('another scan voids what was agreed on one whose checksum was known', () => {
  const [one, two] = ['a', 'b'].map((each) => withMedia({ checksum: each.repeat(64) }))
  const before = applyChange(PLAIN, one ?? {})
  const made = setAgreement(before, [cueId(1)], 'agreed', SAID)
  if (!made.ok) throw new Error('not agreed')
  const agreed = applyChange(before, made.value.change)
  expect(voided(agreed)).toEqual([2, 3, 4])
  expect(voided(applyChange(agreed, two ?? {}))).toEqual(ALL)
})

it('what was agreed is agreed still when the job was kept and read again, to the last bit', () => {
  const anyNumber = fc.double({ min: -0.2, max: 0.2, noNaN: true })
  fc.assert(
    fc.property(anyNumber, anyNumber, (a, b) => {
      const graded = sampleJob([0, 100], (cue) => ({
        ...cue,
        ramp: 3,
        grade: { ...cue.grade, lift: [a, b, 0] as const, saturation: 1 + a },
        framing: { ...cue.framing, pan: b },
      }))
      const made = setAgreement(graded, [1, 2].map(cueId), 'agreed', SAID)
      const read = made.ok ? readJob(writeJob(applyChange(graded, made.value.change))) : undefined
      if (!read?.ok) throw new Error('not read')
      for (const cue of cuesOfReel(read.value, REEL_ID)) {
        expect(agreementOf(read.value, cue)).toBe('agreed')
        const [answer] = cue.answers
        expect(answer && lookSum(answer.look)).toBe(answer?.sha256)
      }
    }),
    { seed: 2, numRuns: 60 },
  )
})

it('says what was changed in few words, with its numbers', () => {
  const { look } = packAnswer(PLAIN, cueId(3))
  const grade = { ...look.grade, gain: [1.1, 1, 1] as const, saturation: 0.9 }
  const to = { ...look, grade, first: frame(252), end: frame(399), ramp: 1 }
  expect(lookChanges(look, to)).toEqual([
    'begins 2 frames later',
    'ends 1 frame earlier',
    'ramp from 12 to 1 frame',
    'gain of red from 1 to 1.1',
    'saturation from 1 to 0.9',
  ])
  const tiny = { ...look, grade: { ...look.grade, saturation: 1.000001 } }
  expect(lookChanges(look, tiny)).toEqual(['saturation from 1 to 1.000001'])
})
