import { ok, type Result } from '../base/result.ts'
import type { Job } from '../job/job.ts'
import type { ReelId } from '../job/recordIds.ts'
import { lossesCc, lossesCcc, lossesCdl } from './cdl/lossesCdl.ts'
import { writeCc, writeCcc, writeCdl } from './cdl/writeCdl.ts'
import { lossesClf } from './clf/lossesClf.ts'
import { writeClf } from './clf/writeClf.ts'
import { lossesCsv } from './csv/lossesCsv.ts'
import { writeCsv } from './csv/writeCsv.ts'
import { lossesEdl } from './edl/lossesEdl.ts'
import { writeEdl } from './edl/writeEdl.ts'
import type { HandOverFormat } from './handOverFormats.ts'
import type { Loss } from './loss.ts'
import { lossesOtio } from './otio/lossesOtio.ts'
import { writeOtio } from './otio/writeOtio.ts'

export type TextFile = { readonly name: string; readonly text: string }

export type HandOverFiles = {
  /** One file, or several where a list must be split. */
  readonly files: readonly TextFile[]
  readonly losses: readonly Loss[]
}

type Writer = (job: Job, reelId: ReelId) => Result<{ readonly files: readonly TextFile[] }>

type Format = {
  readonly write: Writer
  readonly losses: (job: Job, reelId: ReelId) => readonly Loss[]
}

const FORMATS: Readonly<Record<HandOverFormat, Format>> = {
  ccc: { write: writeCcc, losses: lossesCcc },
  cdl: { write: writeCdl, losses: lossesCdl },
  cc: { write: writeCc, losses: lossesCc },
  edl: { write: writeEdl, losses: lossesEdl },
  otio: { write: writeOtio, losses: lossesOtio },
  csv: { write: writeCsv, losses: lossesCsv },
  clf: { write: writeClf, losses: lossesClf },
}

/** What a format cannot carry of a reel. */
export const handOverLosses = (job: Job, reelId: ReelId, format: HandOverFormat): readonly Loss[] =>
  FORMATS[format].losses(job, reelId)

/** A reel's cues in an open format, with the statement of what it cannot carry. */
export const handOverFiles = (
  job: Job,
  reelId: ReelId,
  format: HandOverFormat,
): Result<HandOverFiles> => {
  const { write, losses } = FORMATS[format]
  const written = write(job, reelId)
  return written.ok ? ok({ files: written.value.files, losses: losses(job, reelId) }) : written
}
