import { statfs } from 'node:fs/promises'
import { basename, dirname } from 'node:path'
import { agreementOf } from '../../core/agreement/agreementOf.ts'
import { problem } from '../../core/base/problem.ts'
import { fail, ok, type Result } from '../../core/base/result.ts'
import { isDoubtful } from '../../core/job/isDoubtful.ts'
import type { Cue, Job } from '../../core/job/job.ts'
import { type ChecklistItem, checklist } from '../../core/transfer/checklist.ts'
import { mostBytes } from '../../core/transfer/mostBytes.ts'
import type { Override } from '../../core/transfer/override.ts'
import { filesChecksum } from '../../media/filesChecksum.ts'
import { scanPaths } from '../../media/node/scanPaths.ts'
import { sha256OfFile } from '../../media/node/sha256OfFile.ts'
import type { TransferTask } from './transferTask.ts'

/** The checksum of the scan at a path as the browser takes it too; `onBytes` of all its bytes. */
const checksumAt = async (path: string, onBytes: (done: number) => void): Promise<string> => {
  const paths = await scanPaths(path)
  let before = 0
  const sums: { name: string; sha256: string; bytes: number }[] = []
  for (const each of paths) {
    let bytes = 0
    const sha256 = await sha256OfFile(each, (done) => {
      bytes = done
      onBytes(before + done)
    })
    before += bytes
    sums.push({ name: basename(each), sha256, bytes })
  }
  const [only] = sums
  return sums.length === 1 && only ? only.sha256 : filesChecksum(sums)
}

const roomAt = (path: string): Promise<number | undefined> =>
  statfs(dirname(path)).then(
    ({ bavail, bsize }) => bavail * bsize,
    () => undefined,
  )

/** What is looked at before a pass at the command line, and what of it stands in the way. */
export type BeforePass = {
  readonly items: readonly ChecklistItem[]
  /** Reasons that go into the record: those of the job that hold, and the one that was given. */
  readonly overrides: readonly Override[]
}

/**
 * The checklist as far as it can be known here: nothing was looked at or measured on this machine,
 * which is told and stands in nobody's way; what is wrong does, unless the job holds a reason for
 * just that or `reason` is given.
 */
export const beforePass = async (
  job: Job,
  task: TransferTask,
  out: string,
  reason: string | undefined,
  onBytes: (done: number, total: number) => void,
): Promise<Result<BeforePass>> => {
  const { plan, mediaPath } = task
  const { reel, cues } = plan
  const { checksum, bytes } = reel.media
  const taken =
    checksum === null ? undefined : await checksumAt(mediaPath, (done) => onBytes(done, bytes))
  const cuesThat = (holds: (cue: Cue) => boolean) => cues.filter(holds).map(({ id }) => id)
  const stands = new Map(cues.map((cue) => [cue.id, agreementOf(job, cue)]))
  const items = checklist({
    cues: cues.length,
    unlooked: undefined,
    asksAgreement: job.info.job.asksAgreement,
    notAgreed: cuesThat(({ id }) => ['open', 'asked'].includes(stands.get(id) ?? 'open')),
    changedSince: cuesThat(({ id }) => stands.get(id) === 'changed'),
    unmeasured: undefined,
    outside: [],
    tolerance: plan.profile.name,
    doubtful: cuesThat(isDoubtful),
    recorded: checksum,
    taken,
    room: await roomAt(out),
    needed: mostBytes(plan),
    lineUps: reel.lineUps.length,
    overrides: reel.overrides,
  })
  const wrong = items.filter(({ standing, override }) => standing === 'wrong' && !override)
  const held = items.flatMap(({ override }) => (override ? [override] : []))
  if (wrong.length === 0) return ok({ items, overrides: held })
  if (reason === undefined)
    return fail(
      problem(
        'conflict',
        `The checklist stands in the way: ${wrong.map(({ says }) => says).join(' ')} Put it right, or give --override "a reason", which is kept in the record.`,
      ),
    )
  const at = new Date().toISOString()
  return ok({
    items,
    overrides: [
      ...held,
      ...wrong.map(({ check, says, about }) => ({ check, found: says, about, reason, at })),
    ],
  })
}
