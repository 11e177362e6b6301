import { problem } from '../../core/base/problem.ts'
import { fail, ok, type Result } from '../../core/base/result.ts'
import { readClf } from '../../core/formats/clf/readClf.ts'
import { applyChange } from '../../core/job/change.ts'
import { setGrade } from '../../core/job/commands/setGrade.ts'
import { setReel } from '../../core/job/commands/setReel.ts'
import { cuesOfReel } from '../../core/job/cueList.ts'
import { gradeOfProcess } from '../../core/process/gradeOfProcess.ts'
import { ofFile } from '../readBytes.ts'
import { problemText } from '../terminal.ts'
import type { ImportStep, ImportTask } from './importStep.ts'

/** Puts a process list (.clf) after the base of a reel. */
const intoBase = ({ job, reel, path }: ImportTask, text: string): Result<ImportStep> => {
  const read = ofFile(readClf(text), path)
  if (!read.ok) return read
  const { list, notTaken } = read.value
  const done = setReel(
    job,
    reel.id,
    (before) => ({ ...before, base: { ...before.base, list } }),
    'Base list',
  )
  if (!done.ok) return ofFile(done, path)
  return ok({
    job: applyChange(job, done.value.change),
    lines: [
      `${path} is the base list of ${reel.name} now: ${list.steps.length} steps before every grade.`,
      ...notTaken.map((each) => `Not taken: ${problemText(each)}`),
    ],
    told: { baseList: list.name, steps: list.steps.map(({ kind }) => kind), notTaken },
  })
}

/** Gives a cue, by its number from 1, the grade that a process list is. */
const intoCue = (
  { job, reel, path }: ImportTask,
  text: string,
  number: number,
): Result<ImportStep> => {
  const read = ofFile(readClf(text), path)
  if (!read.ok) return read
  const grade = gradeOfProcess(read.value.list)
  if (!grade)
    return fail(
      problem(
        'conflict',
        `${path} does more than a grade can; leave out --cue to put it after the base.`,
        { file: path },
      ),
    )
  const cue = cuesOfReel(job, reel.id)[number - 1]
  if (!cue)
    return fail(problem('not-found', `${reel.name} has no cue ${number}; give another number.`))
  const done = setGrade(job, [cue.id], () => grade)
  if (!done.ok) return ofFile(done, path)
  const { notTaken } = read.value
  return ok({
    job: applyChange(job, done.value.change),
    lines: [
      `Cue ${number} has the grade of ${path}.`,
      ...notTaken.map((each) => `Not taken: ${problemText(each)}`),
    ],
    told: { cue: number, grade, notTaken },
  })
}

/** A process list (.clf) as the grade of a cue, where one is named, or else in the reel's base. */
export const importProcessList = (
  task: ImportTask,
  text: string,
  cue: number | undefined,
): Result<ImportStep> => (cue === undefined ? intoBase(task, text) : intoCue(task, text, cue))
