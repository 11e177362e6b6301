import { readFile } from 'node:fs/promises'
import { problem } from '../core/base/problem.ts'
import { fail, type Result } from '../core/base/result.ts'
import { readJob } from '../core/formats/job/readJob.ts'
import type { Job } from '../core/job/job.ts'

/** A job from a file, its problems naming the file. */
export const readJobFile = async (path: string): Promise<Result<Job>> => {
  let text: string
  try {
    text = await readFile(path, 'utf8')
  } catch {
    return fail(problem('cannot-read', `${path} cannot be read; check the name.`, { file: path }))
  }
  const job = readJob(text)
  if (job.ok) return job
  const [first, ...rest] = job.problems.map((each) => ({ ...each, at: { ...each.at, file: path } }))
  return first ? fail(first, ...rest) : job
}
