import type { Job, Reel } from '../../core/job/job.ts'

/** What one file of an import did to a job: the job after it, and how that is told. */
export type ImportStep = {
  readonly job: Job
  /** Sentences for a person. */
  readonly lines: readonly string[]
  /** The same for `--json`. */
  readonly told: unknown
}

/** What is asked of every file of an import. */
export type ImportTask = {
  readonly job: Job
  readonly reel: Reel
  readonly path: string
  /** The file of the job. */
  readonly into: string
}
