import { readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import { describe, expect, it } from 'vitest'
import { type Grade, gradeColour } from '../../src/core/colour/grade.ts'
import type { Triple } from '../../src/core/colour/triple.ts'
import { readJob } from '../../src/core/formats/job/readJob.ts'

const SAMPLES = resolve(import.meta.dirname, '../../samples')
const read = (name: string): string => readFileSync(`${SAMPLES}/${name}`, 'utf8')

type Shot = {
  readonly shot: number
  readonly change: { readonly kind: string; readonly first: number; readonly last: number }
  readonly fault: Grade
  readonly correction?: Grade
}

const truth = JSON.parse(read('truth.json')) as { shots: Shot[]; frames: number }
const corrected = truth.shots.filter(({ correction }) => correction !== undefined)

const COLOURS: readonly Triple[] = [
  [0, 0, 0],
  [0.02, 0.3, 0.9],
  [0.5, 0.5, 0.5],
  [1, 0.7, 0.1],
]

describe('what is true of the sample reel', () => {
  it('most faults can be undone exactly', () => {
    expect(corrected.length).toBeGreaterThan(truth.shots.length / 2)
  })

  it.each(corrected)('shot $shot: its correction undoes its fault', ({ fault, correction }) => {
    for (const colour of COLOURS) {
      const back = gradeColour(gradeColour(colour, fault), correction as Grade)
      for (const c of [0, 1, 2] as const) expect(back[c]).toBeCloseTo(colour[c], 9)
    }
  })

  it('the job beside it has a cue for every shot, where the change begins', () => {
    const job = readJob(read('slack-water-at-skerrow.reelwright.json'))
    if (!job.ok) throw new Error(job.problems[0].says)
    const cues = Object.values(job.value.cues).sort((a, b) => a.first - b.first)
    expect(cues.map(({ first }): number => first)).toEqual(
      truth.shots.map(({ change }, index) => (index === 0 ? 0 : change.first)),
    )
    expect(Object.values(job.value.reels)[0]?.frames).toBe(truth.frames)
  })
})
