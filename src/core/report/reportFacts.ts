import type { Loss } from '../formats/loss.ts'
import type { Job } from '../job/job.ts'
import type { CueId, HeldId, ReelId } from '../job/recordIds.ts'
import type { Frame } from '../time/frame.ts'
import type { Verdict } from '../tolerance/verdict.ts'

/** Pictures of one frame as data: addresses: as scanned, after the base, and as delivered. */
export type FramePictures = {
  readonly frame: Frame
  readonly scanned: string
  readonly graded: string
}

/** What is known of a cue besides what the job says of it. */
export type CueFacts = {
  readonly pictures: FramePictures | undefined
  /** By the tolerance the job is held to; undefined where it was not measured. */
  readonly verdict: Verdict | undefined
}

/** SHA-256 of the scan: of its file or, of a sequence, of the list of its files' checksums. */
export type ScanChecksum = { readonly sha256: string; readonly files: number }

/** Files handed over beside the report, and what they cannot carry. */
export type ReportedList = {
  readonly title: string
  readonly files: readonly { readonly name: string; readonly sha256: string }[]
  readonly losses: readonly Loss[]
}

/** All that a report is made of. */
export type ReportFacts = {
  readonly job: Job
  readonly reelId: ReelId
  /** The day it is made on, in words. */
  readonly madeOn: string
  readonly cues: ReadonlyMap<CueId, CueFacts>
  /** Pictures of held frames as delivered, as data: addresses. */
  readonly held: ReadonlyMap<HeldId, string>
  readonly scan: ScanChecksum | undefined
  readonly lists: readonly ReportedList[]
}

/** The most cues of a report that have pictures. */
export const MOST_PICTURED = 1000
