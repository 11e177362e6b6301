import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Grade, IDENTITY_GRADE } from '../../../src/core/colour/grade.ts'
import { applyChange } from '../../../src/core/job/change.ts'
import { carryValues, GRADE_PARTS } from '../../../src/core/job/commands/carryValues.ts'
import { trimFraming } from '../../../src/core/job/commands/trimFraming.ts'
import { trimGrade } from '../../../src/core/job/commands/trimGrade.ts'
import { IDENTITY_FRAMING } from '../../../src/core/picture/framing.ts'
import { cueId, sampleJob } from '../../support/sampleJob.ts'

const GRADE: Grade = {
  lift: [0.02, 0.01, 0],
  gamma: [1.2, 1.1, 1],
  gain: [0.9, 0.95, 1],
  saturation: 0.8,
}
const FRAMING = { ...IDENTITY_FRAMING, zoom: 1.2, pan: 0.1 }

describe('carrying values to other cues', () => {
  const job = sampleJob()

  it('gives the parts asked for and leaves the others', () => {
    const result = carryValues(job, [cueId(2)], { grade: GRADE, framing: FRAMING }, [
      'gamma',
      'framing',
    ])
    if (!result.ok) throw new Error('carrying is never refused here')
    const cue = applyChange(job, result.value.change).cues[cueId(2)]
    expect(cue?.grade).toEqual({ ...IDENTITY_GRADE, gamma: GRADE.gamma })
    expect(cue?.framing).toBe(FRAMING)
  })

  it('makes no change where all is the same already', () => {
    const result = carryValues(job, [cueId(2)], job.cues[cueId(1)] ?? fail(), GRADE_PARTS)
    expect(result.ok && result.value.change.cues?.updated).toEqual({})
  })

  it('raises a gain that would come below the lift carried', () => {
    const dark = { ...IDENTITY_GRADE, gain: [0.1, 0.5, 0.5] as const }
    const from = { grade: { ...IDENTITY_GRADE, lift: [0.2, 0, 0] as const }, framing: FRAMING }
    const darkJob = sampleJob([0, 100], (cue) => ({ ...cue, grade: dark }))
    const result = carryValues(darkJob, [cueId(2)], from, ['lift'])
    if (!result.ok) throw new Error('carrying is never refused here')
    expect(applyChange(darkJob, result.value.change).cues[cueId(2)]?.grade.gain[0]).toBe(0.2)
  })
})

const fail = (): never => {
  throw new Error('the sample job has a first cue')
}

describe('trimming a selection', () => {
  it('moves every cue by as much, so that their differences stay', () => {
    const level = fc.double({ min: -0.2, max: 0.2, noNaN: true })
    fc.assert(
      fc.property(level, level, fc.double({ min: 0.5, max: 2, noNaN: true }), (a, b, factor) => {
        const job = sampleJob([0, 100], (cue, i) => ({
          ...cue,
          grade: { ...GRADE, gain: i === 0 ? [1, 1, 1] : [1 + a, 1, 1] },
        }))
        const from = job.cues[cueId(1)]?.grade ?? fail()
        const to: Grade = {
          ...from,
          gain: [from.gain[0] + b, from.gain[1], from.gain[2]],
          gamma: [from.gamma[0] * factor, from.gamma[1], from.gamma[2]],
        }
        const result = trimGrade(job, [cueId(1), cueId(2)], from, to)
        if (!result.ok) throw new Error(result.problems[0].says)
        const { cues } = applyChange(job, result.value.change)
        const [one, two] = [cues[cueId(1)]?.grade ?? fail(), cues[cueId(2)]?.grade ?? fail()]
        expect(two.gain[0] - one.gain[0]).toBeCloseTo(a, 9)
        expect(one.gain[0]).toBeCloseTo(to.gain[0], 9)
        expect(two.gamma[0]).toBeCloseTo(GRADE.gamma[0] * factor, 9)
        expect(two.lift).toEqual(GRADE.lift)
      }),
      { seed: 3, numRuns: 200 },
    )
  })

  it('zooms by the same factor and pans by as much', () => {
    const job = sampleJob([0, 100], (cue, i) => ({
      ...cue,
      framing: i === 0 ? IDENTITY_FRAMING : { ...IDENTITY_FRAMING, zoom: 2, pan: 0.1 },
    }))
    const to = { ...IDENTITY_FRAMING, zoom: 1.5, pan: 0.05 }
    const result = trimFraming(job, [cueId(1), cueId(2)], IDENTITY_FRAMING, to)
    if (!result.ok) throw new Error(result.problems[0].says)
    expect(applyChange(job, result.value.change).cues[cueId(2)]?.framing).toEqual({
      ...IDENTITY_FRAMING,
      zoom: 3,
      pan: 0.15,
    })
  })
})
