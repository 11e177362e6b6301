import { expect, it } from 'vitest'
import { agreementOf } from '../../../src/core/agreement/agreementOf.ts'
import { lookSum } from '../../../src/core/agreement/cueLook.ts'
import { migrateDown, migrateUp } from '../../../src/core/formats/job/migrations.ts'
import { readJob } from '../../../src/core/formats/job/readJob.ts'
import { writeJob } from '../../../src/core/formats/job/writeJob.ts'
import { cuesOfReel } from '../../../src/core/job/cueList.ts'
import type { Cue, Job } from '../../../src/core/job/job.ts'
import { answerOf } from '../../support/sampleAnswer.ts'
import { REEL_ID, sampleJob } from '../../support/sampleJob.ts'

type CueOf6 = { agreement: string; agreedLook: unknown } & Omit<Cue, 'answers'>

const fileOf6 = (job: Job = sampleJob()) => migrateDown(JSON.parse(writeJob(job)), 6)
const cuesOf6 = (job: Job) => fileOf6(job).cues as readonly CueOf6[]

const standings = (text: string) => {
  const read = readJob(text)
  if (!read.ok) throw new Error(read.problems[0].says)
  return cuesOfReel(read.value, REEL_ID).map((cue) => agreementOf(read.value, cue))
}

const withCues = (edit: (cue: CueOf6, index: number) => object) => {
  const file = fileOf6()
  const cues = (file.cues as readonly CueOf6[]).map((cue, i) => ({ ...cue, ...edit(cue, i) }))
  return JSON.stringify({ ...file, cues })
}

it('what version 6 says of its cues stands as it stood there, without a name or a time', () => {
  const text = withCues(({ grade, framing }, i) => {
    if (i === 1) return { agreement: 'agreed', agreedLook: { grade, framing } }
    if (i === 2)
      return { agreement: 'agreed', agreedLook: { grade: { ...grade, saturation: 2 }, framing } }
    return i === 3 ? { agreement: 'asked' } : {}
  })
  expect(standings(text)).toEqual(['open', 'agreed', 'changed', 'asked'])
  const up = migrateUp(JSON.parse(text)).cues as readonly Cue[]
  const [answer] = up[2]?.answers ?? []
  expect(answer).toMatchObject({ by: '', at: null, look: { first: 250, end: 400 } })
  expect(answer && lookSum(answer.look)).toBe(answer?.sha256)
})

it('what is no word for agreement in version 6 is refused', () => {
  expect(readJob(withCues((_, i) => (i === 1 ? { agreement: 'maybe' } : {}))).ok).toBe(false)
})

it('goes back to version 6 as it stands', () => {
  const job = sampleJob(undefined, (cue, i) => ({
    ...cue,
    answers: i === 0 ? [] : [answerOf(cue, { says: i === 3 ? 'asked' : 'agreed' })],
  }))
  // Cue 2 ends where it ended when it stood alone: it is changed in more than version 6 looks at.
  expect(cuesOf6(job).map(({ agreement }) => agreement)).toEqual(['open', 'open', 'open', 'asked'])
  const alone = sampleJob([0], (cue) => ({ ...cue, answers: [answerOf(cue)] }))
  const graded = sampleJob([0], (cue) => ({
    ...cue,
    answers: [answerOf(cue, {}, { ...cue.grade, saturation: 2 })],
  }))
  expect(cuesOf6(alone)[0]).toMatchObject({ agreement: 'agreed' })
  expect(cuesOf6(graded)[0]).toMatchObject({
    agreement: 'agreed',
    agreedLook: { grade: { saturation: 2 } },
  })
})

it.each([
  ['no reels', { reels: 7 }],
  ['a reel that is nothing', { reels: [null] }],
  ['a base list without steps', { reels: [{ media: {}, base: { list: {} } }] }],
  ['no profiles', { info: {} }],
  ['cues that are words', { cues: ['cue'] }],
])('a file with %s is refused, not tripped over', (_, change) => {
  expect(readJob(JSON.stringify({ ...fileOf6(), ...change })).ok).toBe(false)
})
