import type { Frame } from '../time/frame.ts'
import type { Rate } from '../time/rate.ts'

/** Which flashes: by luminance, or of saturated red. */
export type FlashKind = 'general' | 'red'

/**
 * By which reading changes are too many: the same places each change too often, together more than
 * a quarter of the picture; or more than a quarter changes each time, wherever it lies.
 */
export type FlashReading = 'places' | 'picture' | 'both'

/** Frames, both included, with more flashes than ITU-R BT.1702-3 allows. */
export type FlashBreach = {
  readonly kind: FlashKind
  readonly first: Frame
  readonly last: Frame
  /** The most opposing changes within a second; six are allowed. */
  readonly changes: number
  /** The largest part of the picture, 0…1, that flashes. */
  readonly area: number
  readonly reading: FlashReading
  /** Whether only a seventh change is too many: three flashes and a half. */
  readonly isCautious: boolean
}

/** Frames, both included, with regular light and dark stripes. */
export type StripeBreach = {
  readonly kind: 'stripes'
  readonly first: Frame
  readonly last: Frame
  /** The most pairs side by side; five are allowed. */
  readonly pairs: number
  /** The largest part of the picture, 0…1, that they cover. */
  readonly area: number
  /** Whether they keep still. */
  readonly isStill: boolean
}

/** A sequence that flashes for longer than 5 s and complies: a caution, no breach. */
export type LongFlashing = {
  readonly kind: FlashKind
  readonly first: Frame
  readonly last: Frame
  readonly changes: number
}

/** A number a frame, to plot. Areas are parts of the picture, 0…1. */
export type FlashSeries = {
  /** What changes upwards on the frame, and downwards. */
  readonly up: Float32Array<ArrayBuffer>
  readonly down: Float32Array<ArrayBuffer>
  /** What turns red, and what ceases to be. */
  readonly redUp: Float32Array<ArrayBuffer>
  readonly redDown: Float32Array<ArrayBuffer>
  /** Changes within the second that ends with the frame, of more than a quarter of the picture. */
  readonly changes: Uint8Array<ArrayBuffer>
  readonly redChanges: Uint8Array<ArrayBuffer>
}

/** What the frames `first` and `frames − 1` more hold of flashes, with the caution that goes along. */
export type FlashReport = {
  readonly caution: string
  readonly rate: Rate
  readonly first: Frame
  readonly frames: number
  readonly breaches: readonly (FlashBreach | StripeBreach)[]
  readonly long: readonly LongFlashing[]
  readonly series: FlashSeries
}

/** The buffers of a report's series, to be handed on with it. */
export const seriesBuffers = ({ series }: FlashReport): readonly ArrayBuffer[] =>
  Object.values(series).map((numbers) => numbers.buffer)

/** Whether no limit is passed. It is not a pass of any broadcaster's test: see `caution`. */
export const isWithinFlashLimits = ({ breaches }: FlashReport): boolean => breaches.length === 0
