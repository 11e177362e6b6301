import * as v from 'valibot'
import type { PackRecord } from '../../agreement/answer.ts'
import { problem } from '../../base/problem.ts'
import { fail, type Result, resultOf } from '../../base/result.ts'
import type { Cue, HeldFrame, Job, Reel } from '../../job/job.ts'
import type { PassRecord } from '../../transfer/passRecord.ts'
import type { AnyJobFile } from './anyJobFile.ts'
import { checkJob } from './checkJob.ts'
import { isPlainCue } from './isPlainCue.ts'
import { problemOfIssue } from './issueWords.ts'
import { brokenLine, withJobLines } from './jobLines.ts'
import { jobFileSchema, MOST_CUES } from './jobSchema.ts'
import { JOB_VERSION, migrateUp } from './migrations.ts'

/** A job of 200,000 cues is about 100 MB; nothing larger is read. */
export const LARGEST_JOB_TEXT = 128 * 2 ** 20

/** Some editors write it before UTF-8; a reader may pass over it (RFC 8259 §8.1). */
const BYTE_ORDER_MARK = '\ufeff'

const NOT_JSON =
  'This is no job file, or not a whole one: it does not read as JSON. Give another, or get it again.'

const isRecord = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

/** The cues of a file where every one is plain, so that the schema need not look at them. */
const plainCuesOf = ({ cues }: AnyJobFile): readonly unknown[] | undefined =>
  Array.isArray(cues) && cues.length <= MOST_CUES && cues.every(isPlainCue) ? cues : undefined

/**
 * A job file (docs/job-format.md) → the job. Either the whole job is read or every problem found
 * is told, by field and line; nothing is half-loaded. At most 128 MB. An older version is brought
 * up to date; a later one is refused.
 */
export const readJob = (text: string): Result<Job> => {
  if (text.length > LARGEST_JOB_TEXT)
    return fail(
      problem('too-large', 'A job file of more than 128 MB is not read; split the job.', {
        line: 1,
      }),
    )
  let parsed: unknown
  try {
    parsed = JSON.parse(text.startsWith(BYTE_ORDER_MARK) ? text.slice(1) : text)
  } catch {
    return fail(problem('malformed', NOT_JSON, { line: brokenLine(text) }))
  }
  const job = jobOf(parsed)
  return job.ok ? job : withJobLines(text, job.problems)
}

/** What a job file holds → the job, its problems by field. */
const jobOf = (parsed: unknown): Result<Job> => {
  if (!isRecord(parsed) || parsed.format !== 'reelwright-job')
    return fail(
      problem(
        'unknown-format',
        'This is JSON, but not a Reelwright job: “format” does not say so.',
        {
          field: 'format',
        },
      ),
    )
  const { version } = parsed
  if (typeof version !== 'number' || !Number.isInteger(version) || version < 1)
    return fail(problem('malformed', 'The job states no version number.', { field: 'version' }))
  if (version > JOB_VERSION)
    return fail(
      problem(
        'newer-version',
        `The job was written by a later Reelwright (version ${version}; this one reads ${JOB_VERSION}). Update the program.`,
        { field: 'version' },
      ),
    )
  const current = migrateUp(parsed as AnyJobFile)
  const plainCues = plainCuesOf(current)
  const file = v.safeParse(jobFileSchema, plainCues ? { ...current, cues: [] } : current)
  if (!file.success) {
    const [first, ...rest] = file.issues.map((issue) => problemOfIssue(issue))
    return first ? fail(first, ...rest) : fail(problem('malformed', 'The job cannot be read.'))
  }
  const { info, reels, held, passes, packs } = file.output
  const cues = (plainCues ?? file.output.cues) as readonly unknown[] as readonly Cue[]
  const problems = checkJob(
    info,
    reels as readonly unknown[] as readonly Reel[],
    cues,
    held as readonly unknown[] as readonly HeldFrame[],
    passes as readonly unknown[] as readonly PassRecord[],
    packs as readonly unknown[] as readonly PackRecord[],
  )
  return resultOf(
    {
      info: { job: info },
      reels: Object.fromEntries(reels.map((reel) => [reel.id, reel])),
      cues: Object.fromEntries(cues.map((cue) => [cue.id, cue])),
      held: Object.fromEntries(held.map((each) => [each.id, each])),
      passes: Object.fromEntries(passes.map((each) => [each.id, each])),
      packs: Object.fromEntries(packs.map((each) => [each.id, each])),
    } as unknown as Job,
    problems,
  )
}
