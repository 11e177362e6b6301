import type { Grade } from '../../colour/grade.ts'
import type { CueId, PackId, ReelId } from '../../job/recordIds.ts'
import type { CueLook } from '../cueLook.ts'
import type { PrivateKey } from '../signing.ts'

/** A picture or a clip as a `data:` address. */
export type DataAddress = string

/** Another grade of a cue that a reviewer may prefer: the look's, but for the grade. */
export type PackAlternate = {
  readonly name: string
  readonly grade: Grade
  /** Of the cue's look with this grade (`lookSum`). */
  readonly sha256: string
  readonly picture: DataAddress
}

/** One cue as a reviewer sees it. */
export type PackCue = {
  readonly cue: CueId
  /** As the ledger counts, from 1. */
  readonly number: number
  readonly scene: string
  /** Timecode of its first frame, and how long it is in seconds. */
  readonly timecode: string
  readonly seconds: number
  readonly look: CueLook
  /** Of `look`: what is agreed to (`lookSum`). */
  readonly sha256: string
  /** The frame of the reel that the pictures are of. */
  readonly frame: number
  /** As scanned (after the base), and as graded and framed. */
  readonly before: DataAddress
  readonly after: DataAddress
  readonly alternates: readonly PackAlternate[]
  /** The graded pictures in motion, where they were asked for. */
  readonly clip: DataAddress | null
}

/** All that a review pack holds of a job, and nothing else of it. */
export type PackContents = {
  readonly format: 'reelwright-pack'
  readonly version: 1
  readonly id: PackId
  readonly madeAt: string
  readonly madeFor: string
  /** The job's title, and the reel. */
  readonly title: string
  readonly reel: { readonly id: ReelId; readonly name: string }
  /** What answers are signed with; null: they are not. */
  readonly key: PrivateKey | null
  readonly cues: readonly PackCue[]
}
