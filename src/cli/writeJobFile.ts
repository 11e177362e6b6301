import { problem } from '../core/base/problem.ts'
import { fail, ok, type Result } from '../core/base/result.ts'
import { LARGEST_JOB_TEXT } from '../core/formats/job/readJob.ts'
import { writeJob } from '../core/formats/job/writeJob.ts'
import { applyChange } from '../core/job/change.ts'
import type { LabelledChange } from '../core/job/history.ts'
import type { Job } from '../core/job/job.ts'
import { readJobFile } from './readJobFile.ts'
import { notOver, type ToWrite, writeAll } from './writeFiles.ts'

/**
 * A job as a file, never over one of `inputs`, and what goes with it: all or none. Refused where
 * it would be too large to be read.
 */
export const writeJobFile = async (
  path: string,
  job: Job,
  inputs: readonly string[],
  beside: readonly ToWrite[] = [],
): Promise<Result<string>> => {
  const text = writeJob(job)
  if (text.length > LARGEST_JOB_TEXT)
    return fail(
      problem(
        'too-large',
        `The job would be larger than a job file can be (128 MB), so ${path} was left as it is; take less.`,
        { file: path },
      ),
    )
  const free = await notOver([path], inputs)
  if (!free.ok) return free
  const written = await writeAll([...beside, { path, content: text }])
  return written.ok ? ok(path) : written
}

/**
 * Makes a change to a job as its file is now, which somebody may have saved since it was read, and
 * writes what goes with it: all or none.
 */
export const changeJobFile = async (
  path: string,
  decide: (now: Job) => Result<LabelledChange>,
  inputs: readonly string[],
  beside: readonly ToWrite[] = [],
): Promise<Result<string>> => {
  const now = await readJobFile(path)
  if (!now.ok) return now
  const decided = decide(now.value)
  if (!decided.ok) return decided
  return writeJobFile(path, applyChange(now.value, decided.value.change), inputs, beside)
}

/** Refuses where the file does not hold the job that was read from it: somebody saved it since. */
export const stillAsRead = async (path: string, read: Job): Promise<Result<undefined>> => {
  const now = await readJobFile(path)
  if (!now.ok) return now
  if (writeJob(now.value) === writeJob(read)) return ok(undefined)
  return fail(
    problem(
      'conflict',
      `${path} was saved by somebody else meanwhile, so it was left as it is; try again.`,
      { file: path },
    ),
  )
}
