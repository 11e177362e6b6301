import { describe, expect, it } from 'vitest'
import { readJob } from '../../../src/core/formats/job/readJob.ts'
import { writeJob } from '../../../src/core/formats/job/writeJob.ts'
import { SMALLEST_GAMMA } from '../../../src/core/job/limits.ts'
import { sampleJob } from '../../support/sampleJob.ts'

// biome-ignore lint/suspicious/noExplicitAny: a job file is broken here in ways its type forbids
type Loose = any

const saysOf = (edit: (file: Loose) => void): readonly string[] => {
  const file = JSON.parse(writeJob(sampleJob()))
  edit(file)
  const result = readJob(JSON.stringify(file))
  return result.ok ? [] : result.problems.map(({ says }) => says)
}

describe('what is said of a job file that does not fit its schema', () => {
  it.each<[string, (file: Loose) => void, string]>([
    [
      'a number too small',
      (f) => {
        f.cues[1].grade.gamma[1] = 0
      },
      `In the job file, cue 2, “grade.gamma.1” must be at least ${SMALLEST_GAMMA}, but is 0. Mend it, or get the file again.`,
    ],
    [
      'text for a number',
      (f) => {
        f.cues[0].ramp = 'long'
      },
      'In the job file, cue 1, “ramp” must be a number, but is "long". Mend it, or get the file again.',
    ],
    [
      'part of a frame',
      (f) => {
        f.cues[1].first = 10.5
      },
      'In the job file, cue 2, “first” must be a whole number, but is 10.5. Mend it, or get the file again.',
    ],
    [
      'a word that is none of the choices',
      (f) => {
        f.cues[1].rampShape = 'maybe'
      },
      'In the job file, cue 2, “rampShape” must be one of linear, eased, but is "maybe". Mend it, or get the file again.',
    ],
    [
      'a missing field',
      (f) => {
        delete f.cues[1].note
      },
      'In the job file, cue 2, “note” is missing. Add it, or get the file again.',
    ],
    [
      'a field it does not know',
      (f) => {
        f.weather = 'wet'
      },
      'In the job file, “weather” is not part of a job file. Take it out, or update the program.',
    ],
    [
      'a list that is too long',
      (f) => {
        f.reels[0].base.clear = [0, 0, 0, 0]
      },
      'In the job file, reel 1, “base.clear.3” is not part of a job file. Take it out, or update the program.',
    ],
    [
      'an empty name',
      (f) => {
        f.reels[0].name = ''
      },
      'In the job file, reel 1, “name” must be not empty, but is "". Mend it, or get the file again.',
    ],
    [
      'no list of reels',
      (f) => {
        f.reels = {}
      },
      'In the job file, “reels” must be a list, but is a record. Mend it, or get the file again.',
    ],
  ])('%s', (_, edit, says) => {
    expect(saysOf(edit)).toContain(says)
  })

  it('never shows a schema’s own words', () => {
    const says = saysOf((f) => {
      f.cues = [
        { ...f.cues[0], grade: 3, framing: null, id: '1', scene: 'x'.repeat(5000) },
        7,
        null,
      ]
      f.info.title = 4
      f.version = 4
    })
    expect(says.length).toBeGreaterThan(4)
    for (const each of says) {
      expect(each).toMatch(/^In the job file, .+\.$/u)
      expect(each).not.toMatch(/Expected|Invalid|received|undefined|Object/u)
      expect(each.length).toBeLessThan(250)
    }
  })
})
