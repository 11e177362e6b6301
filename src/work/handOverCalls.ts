import type { Result } from '../core/base/result.ts'
import type { TextFile } from '../core/formats/handOverFiles.ts'
import type { HandOverFormat } from '../core/formats/handOverFormats.ts'
import type { PreparedFormat } from '../core/formats/prepareFormat.ts'
import type { Job } from '../core/job/job.ts'
import type { ReelId } from '../core/job/recordIds.ts'
import type { ReportFacts } from '../core/report/reportFacts.ts'

/** A reel of a job as it is to be handed over. */
export type HandedOver = { readonly job: Job; readonly reelId: ReelId }

/** What the hand-over worker does: it writes lists while the screen goes on. */
export type HandOverCalls = {
  /** Tells, format by format, which files there would be and what each loses. */
  readonly prepare: {
    readonly args: HandedOver
    readonly progress: PreparedFormat
    readonly answer: undefined
  }
  /** The text of one file. */
  readonly file: {
    readonly args: HandedOver & { readonly format: HandOverFormat; readonly name: string }
    readonly progress: never
    readonly answer: string
  }
  /** All files of these formats in one .zip, a folder for each that has a file a cue, and others. */
  readonly zip: {
    readonly args: HandedOver & {
      readonly formats: readonly HandOverFormat[]
      readonly others: readonly TextFile[]
    }
    readonly progress: HandOverFormat
    readonly answer: Uint8Array
  }
  /** The report as a file of HTML, with the checksums of the lists of the reel. */
  readonly report: {
    readonly args: Omit<ReportFacts, 'lists'>
    readonly progress: never
    readonly answer: Result<Blob>
  }
  /** The inspection report of a reel's film as a file of HTML; `madeOn` is today in words. */
  readonly inspection: {
    readonly args: HandedOver & { readonly madeOn: string }
    readonly progress: never
    readonly answer: Result<Blob>
  }
}
