import type { Answer, PackRecord } from '../agreement/answer.ts'
import type { Grade } from '../colour/grade.ts'
import type { FilmBase } from '../film/filmBase.ts'
import type { GuideTrack } from '../film/guideTrack.ts'
import type { Particulars } from '../film/particulars.ts'
import type { Framing } from '../picture/framing.ts'
import type { MatrixName, RangeName } from '../picture/planes.ts'
import type { Gauge } from '../time/footage.ts'
import type { Frame } from '../time/frame.ts'
import type { Rate } from '../time/rate.ts'
import type { ToleranceProfile } from '../tolerance/profile.ts'
import type { Override } from '../transfer/override.ts'
import type { PassRecord } from '../transfer/passRecord.ts'
import type { TransferSettings } from '../transfer/transferSettings.ts'
import type { CueId, HeldId, PackId, PassId, ReelId } from './recordIds.ts'

/** Who stated a fact about the media: the file itself, or the person. */
export type StatedBy = 'file' | 'person'

/** The scan of a reel, as it was when it was opened. */
export type Media = {
  readonly name: string
  /** Container and codec in words, such as 'MP4' and 'H.264'. */
  readonly container: string
  readonly codec: string
  readonly width: number
  readonly height: number
  /** Width of the picture as shown, over its height. */
  readonly displayAspect: number
  readonly depth: number
  readonly layout: '420' | '422' | '444' | 'rgb'
  readonly matrix: MatrixName
  readonly matrixBy: StatedBy
  readonly range: RangeName
  readonly rangeBy: StatedBy
  readonly rateBy: StatedBy
  /** Bytes of the file, or of all files of a sequence. */
  readonly bytes: number
  /** SHA-256 of the scan as it was first taken (`filesChecksum` of a sequence); null: not yet. */
  readonly checksum: string | null
}

/** A line-up of the scanner that was done for a reel, in the words of whoever did it. */
export type LineUp = {
  /** When it was logged, UTC by ISO 8601. */
  readonly at: string
  readonly says: string
}

/** The formats of lists whose own words about a record are kept in the job. */
export type ForeignFormat = 'cdl' | 'edl' | 'otio'

/**
 * What lists made elsewhere said of a record that the job has no field for, as JSON text, at most
 * one of a format. It is written back when the record goes out in that format again.
 */
export type Foreign = readonly { readonly format: ForeignFormat; readonly text: string }[]

/** A reel of film and the scan of it. */
export type Reel = {
  readonly id: ReelId
  readonly name: string
  readonly gauge: Gauge
  readonly rate: Rate
  readonly frames: number
  /** Timecode of frame 0, counted in frames from 00:00:00:00. */
  readonly startCount: number
  readonly isDropFrame: boolean
  /** How the scan becomes video before any grade. */
  readonly base: FilmBase
  /** The film as it lies in the can. */
  readonly particulars: Particulars
  /** Sound to work by; null: none. */
  readonly guide: GuideTrack | null
  readonly media: Media
  /** Line-ups logged for it, the first first. */
  readonly lineUps: readonly LineUp[]
  readonly transfer: TransferSettings
  /** Reasons given on its checklist before a transfer, at most one a check. */
  readonly overrides: readonly Override[]
  readonly foreign: Foreign
}

/** How values pass from the cue before over a ramp: evenly, or slowly at both ends. */
export type RampShape = 'linear' | 'eased'

/** Another grade kept on a cue. */
export type Alternate = { readonly name: string; readonly grade: Grade }

/** How a cue's beginning was found. */
export type BoundaryFound = {
  readonly kind: 'start' | 'cut' | 'dissolve' | 'fade-out' | 'fade-in' | 'dip' | 'by-hand'
  /** How sure the shot finder was, 0…1; 1 where a person decided. */
  readonly confidence: number
}

/** One decision: from `first` up to the next cue of the reel, this is how the picture is made. */
export type Cue = {
  readonly id: CueId
  readonly reel: ReelId
  readonly first: Frame
  /** Frames over which values move from the previous cue's to this cue's; 0 = on the frame. */
  readonly ramp: number
  readonly rampShape: RampShape
  readonly boundary: BoundaryFound
  /** The grade in force, and its name where alternates are kept beside it. */
  readonly grade: Grade
  readonly gradeName: string
  readonly alternates: readonly Alternate[]
  readonly framing: Framing
  /** Cues of one scene carry the same mark; '' = none. */
  readonly scene: string
  readonly note: string
  /** What was said of it, the first first; the last holds (`agreementOf`). */
  readonly answers: readonly Answer[]
  readonly foreign: Foreign
}

/** A frame of a reel kept as a reference, as it was graded and framed when it was kept. */
export type HeldFrame = {
  readonly id: HeldId
  readonly reel: ReelId
  readonly frame: Frame
  readonly name: string
  readonly grade: Grade
  readonly framing: Framing
}

/** What holds for the whole job. */
export type JobInfo = {
  readonly id: 'job'
  readonly title: string
  /** Id of the tolerance profile the job is held to. */
  readonly tolerance: string
  /** The job's own tolerance profiles, besides the published ones. */
  readonly profiles: readonly ToleranceProfile[]
  /** Whether every cue is to be agreed before a transfer. */
  readonly asksAgreement: boolean
}

/** The whole document: plain records by id. A reel's cues are those that name it, by `first`. */
export type Job = {
  readonly info: { readonly job: JobInfo }
  readonly reels: Readonly<Record<ReelId, Reel>>
  readonly cues: Readonly<Record<CueId, Cue>>
  readonly held: Readonly<Record<HeldId, HeldFrame>>
  /** Transfers that were made. */
  readonly passes: Readonly<Record<PassId, PassRecord>>
  /** Review packs that were made. */
  readonly packs: Readonly<Record<PackId, PackRecord>>
}
