import * as v from 'valibot'
import { problem } from '../../base/problem.ts'
import { fail, ok, type Result } from '../../base/result.ts'
import type { Particulars } from '../../film/particulars.ts'
import { problemOfIssue } from './issueWords.ts'
import { particularsSchema } from './particularsSchema.ts'

const [WHOLE] = particularsSchema.pipe
const PARTIAL = v.strictObject(v.partial(WHOLE).entries)

/**
 * Particulars as the job format has them (docs/job-format.md), of which a file may say a few: what
 * it says of a film. Refused whole with all that is wrong with it.
 */
export const readParticulars = (json: string): Result<Partial<Particulars>> => {
  let given: unknown
  try {
    given = JSON.parse(json.replace(/^\ufeff/u, ''))
  } catch {
    return fail(
      problem('malformed', 'This does not read as JSON; write it as a job has “particulars”.'),
    )
  }
  const read = v.safeParse(PARTIAL, given)
  if (read.success) return ok(read.output as Partial<Particulars>)
  const [first, ...rest] = read.issues
  return fail(problemOfIssue(first), ...rest.map((issue) => problemOfIssue(issue)))
}
