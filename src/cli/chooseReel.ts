import { ok, type Result } from '../core/base/result.ts'
import type { Job, Reel } from '../core/job/job.ts'
import { wrongUse } from './arguments.ts'

/**
 * The reel of a job that is meant: by its id or its name, or, where nothing is named, the only one.
 * Wrong use where none is named like that, or several could be meant.
 */
export const chooseReel = (job: Job, named: string | undefined, usage: string): Result<Reel> => {
  const reels = Object.values<Reel>(job.reels)
  const names = reels.map(({ id, name }) => `${id} (${name})`).join(', ')
  const meant =
    named === undefined
      ? reels
      : reels.filter(({ id, name }) => (id as string) === named || name === named)
  const [reel, another] = meant
  if (!reel) return wrongUse(`The job has no reel “${named}”; it has: ${names}.`, usage)
  if (another) return wrongUse(`Say which reel with --reel: ${names}.`, usage)
  return ok(reel)
}
