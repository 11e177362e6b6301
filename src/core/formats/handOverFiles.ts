import { ok, type Result } from '../base/result.ts'
import type { Job } from '../job/job.ts'
import type { ReelId } from '../job/recordIds.ts'
import { lossesCcc } from './ccc/lossesCcc.ts'
import { writeCcc } from './ccc/writeCcc.ts'
import { lossesEdl } from './edl/lossesEdl.ts'
import { writeEdl } from './edl/writeEdl.ts'

export type HandOverFormat = 'ccc' | 'edl'

export type TextFile = { readonly name: string; readonly text: string }

export type HandOverFiles = {
  /** One file, or several where a list must be split. */
  readonly files: readonly TextFile[]
  /** One sentence for each thing the format cannot carry. */
  readonly losses: readonly string[]
}

/** A reel's cues in an open format, with the statement of what it cannot carry. */
export const handOverFiles = (
  job: Job,
  reelId: ReelId,
  format: HandOverFormat,
): Result<HandOverFiles> => {
  const written = format === 'ccc' ? writeCcc(job, reelId) : writeEdl(job, reelId)
  if (!written.ok) return written
  const losses = format === 'ccc' ? lossesCcc(job, reelId) : lossesEdl(job, reelId)
  return ok({ files: written.value.files, losses })
}
