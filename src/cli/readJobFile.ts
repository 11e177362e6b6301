import type { Result } from '../core/base/result.ts'
import { readJob } from '../core/formats/job/readJob.ts'
import type { Job } from '../core/job/job.ts'
import { ofFile, readText } from './readBytes.ts'

/** A job from a file, its problems naming the file. */
export const readJobFile = async (path: string): Promise<Result<Job>> => {
  const text = await readText(path)
  return text.ok ? ofFile(readJob(text.value), path) : text
}
