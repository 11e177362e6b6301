import { problem } from '../core/base/problem.ts'
import { fail, type Result } from '../core/base/result.ts'
import { LARGEST_JOB_TEXT } from '../core/formats/job/readJob.ts'
import { writeJob } from '../core/formats/job/writeJob.ts'
import type { Job } from '../core/job/job.ts'
import { notOver, writeWhole } from './writeFiles.ts'

/** A job as a file, never over one of `inputs`; refused where it would be too large to be read. */
export const writeJobFile = async (
  path: string,
  job: Job,
  inputs: readonly string[],
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
  return free.ok ? writeWhole(path, text) : free
}
