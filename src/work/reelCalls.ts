import type { Result } from '../core/base/result.ts'
import type { CensusData } from '../core/census/censusData.ts'
import type { CueLook } from '../core/census/cueLook.ts'
import type { FoundStretch } from '../core/conform/reconformPlan.ts'
import type { ReelPrints } from '../core/conform/reelPrints.ts'
import type { CueFlashes } from '../core/flashes/cueFlashes.ts'
import type { FlashReport } from '../core/flashes/flashReport.ts'
import type { Coding, Planes } from '../core/picture/planes.ts'
import type { Still } from '../core/picture/still.ts'
import type { FramePictures, ScanChecksum } from '../core/report/reportFacts.ts'
import type { Frame } from '../core/time/frame.ts'
import type { Rate } from '../core/time/rate.ts'
import type { ToleranceProfile } from '../core/tolerance/profile.ts'
import type { Verdict } from '../core/tolerance/verdict.ts'
import type { EncodedStill } from '../media/encodeStill.ts'
import type { MediaFacts } from '../media/mediaFacts.ts'
import type { FlashesRequest } from './checkFlashes.ts'
import type { CueCheck } from './checkTolerance.ts'
import type { ShotNews, ShotsFound } from './findShots.ts'
import type { PicturesRequest } from './framePictures.ts'
import type { StillFileRequest } from './makeStillFile.ts'
import type { Pace } from './pace.ts'
import type { PlayedFrame, PlayPlan } from './playRange.ts'
import type { ClipRequest } from './review/makeClip.ts'
import type { ReviewPictures, ReviewRequest } from './review/reviewPictures.ts'

export type StillRequest = {
  readonly frame: Frame
  readonly width: number
  readonly height: number
  readonly coding: Coding
}

export type CheckRequest = {
  readonly check: CueCheck
  readonly coding: Coding
  readonly profile: ToleranceProfile
  readonly rate: Rate
  /** Whether the cue's colours are to be counted on the way, and given back. */
  readonly wantsCensus: boolean
  /** Whether they are to be counted for what the cue looks like. */
  readonly wantsLook: boolean
}

/** Some frames of a cue, to be measured as they would be delivered. */
export type FramesCheck = Omit<CheckRequest, 'wantsCensus' | 'wantsLook' | 'rate'> & {
  readonly frames: readonly Frame[]
}

export type CheckAnswer = {
  readonly verdict: Verdict | undefined
  /** Undefined if it was not wanted, or the cue is all ramp. */
  readonly census: CensusData | undefined
  /** Undefined if no colours were counted. */
  readonly look: CueLook | undefined
  /** What flashes within the cue by itself; undefined where nothing does. */
  readonly flashes: CueFlashes | undefined
}

/** What a reel worker does: it holds one open reel and reads, plays, searches and checks it. */
export type ReelCalls = {
  readonly open: {
    readonly args: { readonly files: readonly File[] }
    readonly progress: never
    readonly answer: Result<MediaFacts>
  }
  readonly read: { readonly args: Frame; readonly progress: never; readonly answer: Planes }
  readonly still: { readonly args: StillRequest; readonly progress: never; readonly answer: Still }
  /** A whole frame as a picture file. */
  readonly stillFile: {
    readonly args: StillFileRequest
    readonly progress: never
    readonly answer: EncodedStill
  }
  /** Pictures of a frame for a report. */
  readonly pictures: {
    readonly args: PicturesRequest
    readonly progress: never
    readonly answer: FramePictures
  }
  /** Pictures of a frame for a review pack. */
  readonly reviewPictures: {
    readonly args: ReviewRequest
    readonly progress: never
    readonly answer: ReviewPictures
  }
  /** A cue in motion for a review pack; null where it cannot be made. */
  readonly clip: {
    readonly args: ClipRequest
    readonly progress: never
    readonly answer: string | null
  }
  /** The checksum of the scan that is open; progress is the bytes done. */
  readonly checksum: {
    readonly args: undefined
    readonly progress: number
    readonly answer: ScanChecksum
  }
  /** Begins a run of frames and ends the one before; the frames come by `playNext`. */
  readonly play: { readonly args: PlayPlan; readonly progress: never; readonly answer: undefined }
  readonly playNext: {
    readonly args: undefined
    readonly progress: never
    readonly answer: PlayedFrame | undefined
  }
  readonly stop: { readonly args: undefined; readonly progress: never; readonly answer: undefined }
  readonly findShots: {
    readonly args: undefined
    readonly progress: ShotNews
    readonly answer: ShotsFound
  }
  /** What finds the reel's pictures again on another scan of it. */
  readonly fingerprint: {
    readonly args: undefined
    readonly progress: Pace
    readonly answer: ReelPrints
  }
  /** The stretches of a reel that another scan or cut of it shows; no reel need be open. */
  readonly findStretches: {
    readonly args: { readonly old: ReelPrints; readonly fresh: ReelPrints }
    readonly progress: never
    readonly answer: readonly FoundStretch[]
  }
  readonly checkCue: {
    readonly args: CheckRequest
    readonly progress: number
    readonly answer: CheckAnswer
  }
  /** The flashes of cues that follow one another, across their cuts; progress is frames done. */
  readonly checkFlashes: {
    readonly args: FlashesRequest
    readonly progress: number
    readonly answer: FlashReport | undefined
  }
  /** The verdict on these frames alone; undefined of none. */
  readonly checkFrames: {
    readonly args: FramesCheck
    readonly progress: never
    readonly answer: Verdict | undefined
  }
}
