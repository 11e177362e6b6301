import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { agreementOf } from '../../../src/core/agreement/agreementOf.ts'
import type { Answer } from '../../../src/core/agreement/answer.ts'
import type { AnswerFile } from '../../../src/core/agreement/answerFile.ts'
import { applyAnswers } from '../../../src/core/agreement/applyAnswers.ts'
import { planAnswers } from '../../../src/core/agreement/planAnswers.ts'
import { applyChange, invertChange } from '../../../src/core/job/change.ts'
import { setAgreement } from '../../../src/core/job/commands/setAgreement.ts'
import { setGrade } from '../../../src/core/job/commands/setGrade.ts'
import type { Job } from '../../../src/core/job/job.ts'
import type { CueId, PackId, ReelId } from '../../../src/core/job/recordIds.ts'
import { answerFile, packAnswer } from '../../support/sampleAnswerFile.ts'
import { cueId, sampleJob } from '../../support/sampleJob.ts'

const JOB = sampleJob()

const planOf = (job: Job, ...files: AnswerFile[]) => {
  const plan = planAnswers(job, files)
  if (!plan.ok) throw new Error(plan.problems[0].says)
  return plan.value
}

const taken = (
  job: Job,
  files: readonly AnswerFile[],
  choices: Record<string, string> = {},
): Job => {
  const chosen = new Map(Object.entries(choices)) as unknown as Map<CueId, string>
  const made = applyAnswers(job, planOf(job, ...files), chosen)
  if (!made.ok) throw new Error(made.problems[0].says)
  const after = applyChange(job, made.value.change)
  expect(applyChange(after, invertChange(made.value.change))).toEqual(job)
  return after
}

const stands = (job: Job, n: number) => {
  const cue = job.cues[cueId(n)]
  return cue && agreementOf(job, cue)
}

const given = (n: number, change: Partial<Answer> = {}, job = JOB) => ({
  cue: cueId(n),
  answer: packAnswer(job, cueId(n), change),
})

const dimmed = (job: Job, n: number) => {
  const made = setGrade(job, [cueId(n)], (grade) => ({ ...grade, gain: [0.9, 0.9, 0.9] }))
  if (!made.ok) throw new Error('not set')
  return applyChange(job, made.value.change)
}

describe('taking answers in', () => {
  it('puts what was said on its cues, in one step', () => {
    const file = answerFile([given(1), given(2, { says: 'asked', note: 'Warmer.' })])
    const after = taken(JOB, [file])
    expect([1, 2, 3].map((n) => stands(after, n))).toEqual(['agreed', 'asked', 'open'])
    expect(after.cues[cueId(2)]?.answers.at(-1)).toEqual(file.answers[1]?.answer)
  })

  it('takes names that every record has for cues that are gone, and for packs not known', () => {
    const odd = { ...given(1), cue: 'constructor' as CueId }
    expect(planOf(JOB, answerFile([odd])).rows.map(({ outcome }) => outcome)).toEqual(['gone'])
    expect(taken(JOB, [answerFile([odd])])).toEqual(JOB)
    const foreign = {
      ...answerFile([given(1)]),
      pack: 'constructor' as PackId,
      reel: { id: 'reel-z' as ReelId, name: 'Bilge reel 2' },
    }
    expect(planAnswers(JOB, [foreign]).ok).toBe(false)
  })

  it('puts the later moment last, whether or not a time has parts of a second', () => {
    const early = given(1, { says: 'asked', at: '2026-03-05T10:00:00Z' })
    const late = given(1, { at: '2026-03-05T10:00:00.5Z' })
    for (const files of [
      [early, late],
      [late, early],
    ]) {
      const after = taken(
        JOB,
        files.map((each) => answerFile([each])),
      )
      expect(after.cues[cueId(1)]?.answers.map(({ says }) => says)).toEqual(['asked', 'agreed'])
    }
  })

  it('twice takes nothing more', () => {
    const file = answerFile([given(1)])
    const after = taken(JOB, [file])
    expect(planOf(after, file).rows.map(({ outcome }) => outcome)).toEqual(['taken already'])
    expect(taken(after, [file])).toEqual(after)
    expect(taken(JOB, [file, file])).toEqual(after)
  })

  it('tells what was changed since the pack was made, and the cue is changed since', () => {
    const file = answerFile([given(2)])
    const later = dimmed(JOB, 2)
    expect(planOf(later, file).rows[0]?.changes).toEqual(['gain from 1 to 0.9'])
    expect(stands(taken(later, [file]), 2)).toBe('changed')
  })

  it('tells of cues that have gone', () => {
    const file = answerFile([given(2), { ...given(3), cue: 'cue-99' as CueId }])
    expect(planOf(JOB, file).rows.map(({ outcome }) => outcome)).toEqual(['new', 'gone'])
    expect(stands(taken(JOB, [file]), 2)).toBe('agreed')
  })

  it('refuses the answer to a pack of another job by its name', () => {
    const reel = { id: 'reel-99' as ReelId, name: 'Lighthouse 2' }
    const refused = planAnswers(JOB, [answerFile([given(1)], { title: 'Lighthouse', reel })])
    expect(!refused.ok && refused.problems[0].says).toContain('“Lighthouse”, reel “Lighthouse 2”')
  })

  it('is refused once the job is another than the plan was made on', () => {
    const plan = planOf(JOB, answerFile([given(1)]))
    expect(applyAnswers(dimmed(JOB, 1), plan, new Map()).ok).toBe(false)
  })
})

describe('reviewers who are not of one mind', () => {
  const ines = answerFile([given(2)])
  const joren = answerFile([
    given(2, { says: 'asked', by: 'Joren', at: '2026-11-27T11:00:00.000Z', note: 'Too dark.' }),
  ])

  it('are told with what each says, and nothing is taken until a person chooses', () => {
    const plan = planOf(JOB, ines, joren)
    expect(plan.conflicts.map(({ answers }) => answers.map(({ by, says }) => [by, says]))).toEqual([
      [
        ['Ines', 'agreed'],
        ['Joren', 'asked'],
      ],
    ])
    const refused = applyAnswers(JOB, plan, new Map())
    expect(!refused.ok && refused.problems[0].says).toContain('cue 2')
    expect(applyAnswers(JOB, plan, new Map([[cueId(2), 'Nobody']])).ok).toBe(false)
  })

  it('come to what is chosen, with both kept', () => {
    for (const [by, standing] of [
      ['Ines', 'agreed'],
      ['Joren', 'asked'],
    ] as const)
      for (const files of [
        [ines, joren],
        [joren, ines],
      ]) {
        const after = taken(JOB, files, { [cueId(2)]: by })
        expect(stands(after, 2)).toBe(standing)
        expect(after.cues[cueId(2)]?.answers).toHaveLength(2)
      }
  })

  it('are told where one of them was taken in before', () => {
    const before = taken(JOB, [ines])
    expect(planOf(before, joren).conflicts).toHaveLength(1)
    expect(stands(taken(before, [joren], { [cueId(2)]: 'Ines' }), 2)).toBe('agreed')
  })

  it('are of one mind where they say the same, or one thought again', () => {
    const also = answerFile([given(2, { by: 'Joren', at: '2026-11-27T11:00:00.000Z' })])
    expect(planOf(JOB, ines, also).conflicts).toEqual([])
    const again = answerFile([given(2, { says: 'asked', at: '2026-11-27T12:00:00.000Z' })])
    expect(planOf(JOB, ines, again).conflicts).toEqual([])
    for (const files of [
      [ines, again],
      [again, ines],
    ])
      expect(stands(taken(JOB, files), 2)).toBe('asked')
    expect(stands(taken(taken(JOB, [again]), [ines]), 2)).toBe('asked')
  })

  it('do not stand against what the job itself said without a name', () => {
    const opened = setAgreement(JOB, [cueId(2)], 'asked', { by: '', at: '2026-11-27T09:00:00Z' })
    if (!opened.ok) throw new Error('not said')
    const before = applyChange(JOB, opened.value.change)
    expect(planOf(before, ines).conflicts).toEqual([])
    expect(stands(taken(before, [ines]), 2)).toBe('agreed')
  })
})

const anyAnswer = fc.record({
  n: fc.integer({ min: 1, max: 4 }),
  by: fc.constantFrom('Ines', 'Joren', 'Mara'),
  minute: fc.integer({ min: 0, max: 59 }),
  note: fc.constantFrom('', 'a', 'b'),
})

it('answers that do not conflict come to the same in whatever order they are taken', () => {
  fc.assert(
    fc.property(
      fc.array(fc.array(anyAnswer, { minLength: 1, maxLength: 4 }), { minLength: 2, maxLength: 4 }),
      fc.integer({ min: 0, max: 23 }),
      (said, turn) => {
        const files = said.map((answers) =>
          answerFile(
            answers.map(({ n, by, minute, note }) => {
              const at = `2026-11-27T10:${String(minute).padStart(2, '0')}:00.000Z`
              // What is said turns on the cue, so that all say the same of it.
              return given(n, { by, at, note, says: n % 2 === 0 ? 'agreed' : 'asked' })
            }),
          ),
        )
        const turned = [...files.slice(turn % files.length), ...files.slice(0, turn % files.length)]
        const oneByOne = (all: readonly AnswerFile[]) =>
          all.reduce((job, file) => taken(job, [file]), JOB)
        const together = taken(JOB, files)
        expect(taken(JOB, turned)).toEqual(together)
        expect(oneByOne(files)).toEqual(together)
        expect(oneByOne(turned.toReversed())).toEqual(together)
      },
    ),
    { seed: 5, numRuns: 60 },
  )
})
