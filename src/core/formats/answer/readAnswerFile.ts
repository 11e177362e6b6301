import * as v from 'valibot'
import type { AnswerFile } from '../../agreement/answerFile.ts'
import { answerText } from '../../agreement/answerText.ts'
import { lookSum } from '../../agreement/cueLook.ts'
import { type Problem, problem } from '../../base/problem.ts'
import { fail, type Result, resultOf } from '../../base/result.ts'
import { checkGrade } from '../../job/checkGrade.ts'
import type { GivenAnswer } from '../../job/commands/addAnswers.ts'
import { NAME_LIMIT } from '../../job/limits.ts'
import { answerSchema } from '../job/answerSchema.ts'
import { problemOfIssue } from '../job/issueWords.ts'
import { identifier, text } from '../job/schemaParts.ts'
import { answerInMail } from './answerInMail.ts'

/** Answers to 10,000 cues with notes come to a quarter of this. */
export const LARGEST_ANSWER_TEXT = 64 * 2 ** 20

const MOST_GIVEN = 20_000

const answerFileSchema = v.strictObject({
  format: v.literal('reelwright-answer'),
  version: v.literal(1),
  pack: identifier,
  title: text(NAME_LIMIT),
  reel: v.strictObject({ id: identifier, name: text(NAME_LIMIT) }),
  answers: v.pipe(
    v.array(v.strictObject({ cue: identifier, answer: answerSchema })),
    v.minLength(1),
    v.maxLength(MOST_GIVEN),
  ),
})

const parsed = (json: string): unknown => {
  try {
    return JSON.parse(json)
  } catch {
    return undefined
  }
}

/**
 * The JSON in a text that may have come by mail: words before and after it, and marks of quoting at
 * the beginnings of its lines, are passed over.
 */
const jsonIn = (mail: string): unknown => {
  const found = answerInMail(mail)
  const record = found === undefined ? undefined : parsed(found)
  if (record !== undefined) return record
  const unquoted = mail.replace(/^(?:[>|] ?)+/gmu, '')
  for (const each of [mail, unquoted]) {
    const found = parsed(each.slice(each.indexOf('{'), each.lastIndexOf('}') + 1))
    if (found !== undefined) return found
  }
  return undefined
}

/** What a schema cannot say of an answer. */
const problemsOf = (file: AnswerFile, { cue, answer }: GivenAnswer, index: number): Problem[] => {
  const at = { field: `answers.${index}` }
  const problems: Problem[] = []
  const refuse = (code: Problem['code'], says: string): void => {
    problems.push(problem(code, `Answer ${index + 1}: ${says} Ask for the answer again.`, at))
  }
  if (answer.pack !== file.pack) refuse('conflict', 'it names another pack than the file does.')
  if (!answerText(cue, answer).ok) refuse('malformed', 'its words hold half a character.')
  const { grade, from } = answer.look
  if (!checkGrade(grade).ok || (from && !checkGrade(from.grade).ok))
    refuse('out-of-range', 'its grade is none that a job can hold.')
  else if (lookSum(answer.look) !== answer.sha256)
    refuse('conflict', 'its pictures are not those that its checksum is of.')
  if (answer.marks.length > 0 && answer.frame === null)
    refuse('missing', 'lines were drawn on a frame that is not named.')
  return problems
}

/**
 * The answer file of a review pack, which anybody may have written: whole, or refused with all that
 * is wrong with it. At most 64 MB and 20,000 answers. Whether it belongs to a job and who signed it
 * is not looked at here (`planAnswers`, `signatureStands`).
 */
export const readAnswerFile = (mail: string): Result<AnswerFile> => {
  if (mail.length > LARGEST_ANSWER_TEXT)
    return fail(problem('too-large', 'An answer of more than 64 MB is not read; get it again.'))
  const found = jsonIn(mail)
  if (typeof found !== 'object' || found === null || !('format' in found))
    return fail(
      problem(
        'malformed',
        'This holds no answer of a review pack, or not a whole one; copy all of it, from the first brace to the last.',
      ),
    )
  if (found.format !== 'reelwright-answer')
    return fail(
      problem('unknown-format', 'This is no answer of a review pack: “format” does not say so.', {
        field: 'format',
      }),
    )
  if ('version' in found && typeof found.version === 'number' && found.version > 1)
    return fail(
      problem(
        'newer-version',
        `The answer was written by a later Reelwright (version ${found.version}; this one reads 1). Update the program.`,
        { field: 'version' },
      ),
    )
  const file = v.safeParse(answerFileSchema, found)
  if (!file.success) {
    const [first, ...rest] = file.issues.map((issue) => problemOfIssue(issue, 'an answer'))
    return first ? fail(first, ...rest) : fail(problem('malformed', 'The answer cannot be read.'))
  }
  const answers = file.output as unknown as AnswerFile
  const problems = answers.answers.flatMap((given, index) => problemsOf(answers, given, index))
  return resultOf(answers, problems)
}
