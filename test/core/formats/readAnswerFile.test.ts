import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Answer } from '../../../src/core/agreement/answer.ts'
import {
  LARGEST_ANSWER_TEXT,
  readAnswerFile,
} from '../../../src/core/formats/answer/readAnswerFile.ts'
import { answerFile, packAnswer } from '../../support/sampleAnswerFile.ts'
import { cueId, sampleJob } from '../../support/sampleJob.ts'

const JOB = sampleJob()
const given = (n: number, change: Partial<Answer> = {}) => ({
  cue: cueId(n),
  answer: packAnswer(JOB, cueId(n), change),
})
const FILE = answerFile([given(1), given(2, { says: 'asked', marks: [[[0.5, 0.25]]], frame: 120 })])

const broken = (change: (file: ReturnType<typeof JSON.parse>) => void): string => {
  const file = structuredClone(FILE)
  change(file)
  return JSON.stringify(file)
}

describe('an answer file', () => {
  it('is read as it was written, from a mail as well', () => {
    const text = JSON.stringify(FILE, undefined, 1)
    expect(readAnswerFile(text)).toEqual({ ok: true, value: FILE })
    expect(readAnswerFile(`\ufeff${text}`)).toEqual({ ok: true, value: FILE })
    const mail = `Dear Mara,\n\n${text.replace(/^/gmu, '> > ')}\n\nInes\n`
    expect(readAnswerFile(mail)).toEqual({ ok: true, value: FILE })
  })

  it.each<[string, string, RegExp]>([
    ['no JSON', 'agreed', /no answer of a review pack/u],
    ['half of it', JSON.stringify(FILE).slice(0, 500), /copy all of it/u],
    ['another format', '{"format":"reelwright-job"}', /is no answer/u],
    ['a later version', broken((f) => (f.version = 2)), /later Reelwright/u],
    ['no answers', broken((f) => (f.answers = [])), /“answers” must be/u],
    [
      'a field of others',
      broken((f) => (f.answers[0].answer.run = 'x')),
      /answer 1, “answer.run”/u,
    ],
    [
      'a prototype key',
      `${broken(() => {}).slice(0, -1)},"__proto__":{"a":1}}`,
      /is not part of an answer/u,
    ],
    ['a cue that is no id', broken((f) => (f.answers[0].cue = '../../x')), /“cue” must be/u],
    ['a time that is none', broken((f) => (f.answers[0].answer.at = 'now')), /“answer.at”/u],
    [
      'another pack',
      broken((f) => (f.answers[1].answer.pack = 'pack-2')),
      /Answer 2: it names another pack/u,
    ],
    [
      'other pictures',
      broken((f) => (f.answers[0].answer.look.grade.saturation = 2)),
      /Answer 1: its pictures/u,
    ],
    [
      'another checksum',
      broken((f) => (f.answers[0].answer.sha256 = 'a'.repeat(64))),
      /Answer 1: its pictures/u,
    ],
    [
      'gain below lift',
      broken((f) => (f.answers[0].answer.look.grade.lift = [2, 2, 2])),
      /Answer 1: its grade/u,
    ],
    [
      'half a character',
      broken((f) => (f.answers[0].answer.note = 'a\ud800')),
      /half a character/u,
    ],
    [
      'lines on no frame',
      broken((f) => (f.answers[1].answer.frame = null)),
      /Answer 2: lines were drawn/u,
    ],
    [
      'a line off the picture',
      broken((f) => (f.answers[1].answer.marks = [[[1.5, 0]]])),
      /at most 1/u,
    ],
    [
      'a note too long',
      broken((f) => (f.answers[0].answer.note = 'x'.repeat(4001))),
      /at most 4000 characters/u,
    ],
    ['deep nesting', `${'['.repeat(200_000)}{"format":1`, /no answer of a review pack/u],
  ])('with %s is refused whole', (_, text, says) => {
    const read = readAnswerFile(text)
    expect(read.ok ? '' : read.problems.map((each) => each.says).join('\n')).toMatch(says)
  })

  it('too large is not looked at', () => {
    const read = readAnswerFile(' '.repeat(LARGEST_ANSWER_TEXT + 1))
    expect(read).toMatchObject({ ok: false, problems: [{ code: 'too-large' }] })
  })

  it('damaged anywhere is read as it was or not at all', () => {
    const text = JSON.stringify(FILE)
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: text.length - 1 }),
        fc.constantFrom('0', '9', 'a', '"', ',', '}', ' ', '\\', '-'),
        (at, letter) => {
          const read = readAnswerFile(text.slice(0, at) + letter + text.slice(at + 1))
          if (!read.ok) return
          // What is read holds together: every look is of its checksum.
          for (const { answer } of read.value.answers)
            expect(answer.look).toEqual(
              FILE.answers.find((each) => each.answer.sha256 === answer.sha256)?.answer.look,
            )
        },
      ),
      { seed: 4, numRuns: 400 },
    )
  })
})
