import { describe, expect, it } from 'vitest'
import { lossesEdl } from '../../../../src/core/formats/edl/lossesEdl.ts'
import type { Job } from '../../../../src/core/job/job.ts'
import { rate } from '../../../../src/core/time/rate.ts'
import { says } from '../../../support/lossWords.ts'
import { REEL_ID, sampleJob, sampleReel } from '../../../support/sampleJob.ts'

const lossesOf = (job: Job): string => says(lossesEdl(job, REEL_ID))

describe('what an edit decision list loses', () => {
  it('is decimals past the sixth, letters outside ASCII, the full name of a reel', () => {
    const job = sampleJob(undefined, (cue, i) => ({
      ...cue,
      note: i === 1 ? 'Hände' : 'plain\nin two lines',
      grade: { ...cue.grade, gamma: [1.14, 1, 0.9] },
    }))
    const losses = lossesOf(job)
    expect(losses).toContain('More than six decimals')
    expect(losses).toContain('Letters outside ASCII and repeated blanks in the note of cue 2.')
    expect(losses).toContain('The event lines say ORLOP_RE, a FULL REEL NAME comment has the whole')
  })

  it('is a name of a reel that a comment cannot have', () => {
    const named = (name: string): string =>
      lossesOf(sampleJob([0], undefined, sampleReel({ name })))
    expect(named('ORLOP')).not.toContain('full name')
    expect(named('Zürich')).toContain('say ZURICH, a FULL REEL NAME comment has Zurich.')
    expect(named('東京 1')).toContain('The event lines and the names of clips say 1.')
    expect(named('x'.repeat(70))).toContain('The event lines and the names of clips say XXXXXXXX.')
  })

  it('is a title only where it is cut, number of the list included', () => {
    const titled = (title: string, firsts = [0]): Job => {
      const reel = sampleReel({ frames: 9000 })
      const job = sampleJob(firsts, undefined, reel)
      return { ...job, info: { job: { ...job.info.job, title } } }
    }
    const many = Array.from({ length: 1000 }, (_, i) => i)
    expect(lossesOf(titled('Orlop'))).not.toContain('whole title')
    expect(lossesOf(titled('x'.repeat(70)))).not.toContain('whole title')
    expect(lossesOf(titled('x'.repeat(71)))).toContain('whole title')
    expect(lossesOf(titled('x'.repeat(70), many))).toContain('whole title')
    expect(lossesOf(titled('x'.repeat(63), many))).not.toContain('whole title')
  })

  it('is a ramp to other readers, though a comment has it', () => {
    const job = sampleJob(undefined, (cue, i) => ({ ...cue, ramp: i === 2 ? 12 : 0 }))
    expect(lossesOf(job)).toContain('The ramp of cue 3, to other readers')
    expect(lossesOf(job)).toContain('A RAMP comment has its frames and shape')
    expect(lossesOf(sampleJob())).not.toContain('ramp')
  })

  it('is the rate, and more so one that few programs count', () => {
    expect(lossesOf(sampleJob())).toContain('The rate of 25 frames a second')
    const slow = sampleJob([0], undefined, sampleReel({ rate: rate(18) }))
    expect(lossesOf(slow)).toContain('few programs count 18')
  })

  it('is kinds of shot change, names of grades, and grades of other lists not taken', () => {
    const job = sampleJob([0, 100], (cue, i) =>
      i === 0
        ? cue
        : {
            ...cue,
            boundary: { kind: 'dissolve', confidence: 0.8 },
            gradeName: 'warm',
            foreign: [{ format: 'edl', text: '{"notTaken":["ASC_SAT -1"]}' }],
          },
    )
    const losses = lossesOf(job)
    expect(losses).toContain('The dissolve or fade at the beginning of cue 2.')
    expect(losses).toContain('The name of the grade of cue 2.')
    expect(losses).toContain('another list gave cue 2')
  })
})
