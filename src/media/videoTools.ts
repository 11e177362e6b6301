import type { Result } from '../core/base/result.ts'
import type { PassPlan } from '../core/transfer/passPlan.ts'
import type { CodedVideo } from './codedVideo.ts'

/** How the video of a plan is encoded here. */
export type VideoEncoding = {
  readonly config: VideoEncoderConfig
  /** Quantizer of every picture; undefined where the encoder holds a bit rate instead. */
  readonly quantizer: number | undefined
  /** Codec and quality in words, as for a record. */
  readonly words: string
}

/** Encodes one run of pictures by an encoder of its own. */
export type VideoRun = {
  /**
   * @param bytes 8-bit 4:2:0 planes, narrow range
   * @param at place in the file, from 0; one after the other
   */
  readonly add: (bytes: Uint8Array<ArrayBuffer>, at: number) => Promise<void>
  /** Rejects where the encoder failed or left a picture out. */
  readonly finish: () => Promise<CodedVideo>
  readonly abandon: () => void
}

/** What becomes of a scan's sound. */
export type CarriedSound = { readonly isCarried: boolean; readonly says: string }

/** Bytes for a place in a file. */
export type WrittenChunk = {
  readonly type: 'write'
  readonly data: Uint8Array<ArrayBuffer>
  readonly position: number
}

export type JoinedVideo = {
  readonly plan: PassPlan
  /** All runs in order, each read when it is wanted. */
  readonly runs: readonly (() => Promise<CodedVideo>)[]
  /** The files of the scan, for its sound. */
  readonly scan: readonly File[]
  readonly write: (chunk: WrittenChunk) => Promise<void>
  readonly onRun: (done: number) => void
  readonly signal: AbortSignal
}

/** What video is made with where a pass runs. */
export type VideoTools = {
  /** Refuses what this browser cannot encode, by name. */
  readonly chooseEncoding: (plan: PassPlan) => Promise<Result<VideoEncoding>>
  readonly beginRun: (plan: PassPlan, encoding: VideoEncoding) => VideoRun
  /** Writes one file of all runs and the scan's sound. */
  readonly join: (video: JoinedVideo) => Promise<CarriedSound>
}
