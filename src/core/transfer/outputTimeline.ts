import { framesPerSecond, type Rate } from '../time/rate.ts'
import type { TransferSettings } from './transferSettings.ts'

/** What stands before the reel, in the order it is written. */
export type HeadPart = 'bars' | 'slate' | 'leader'

export const HEAD_PARTS: readonly HeadPart[] = ['bars', 'slate', 'leader']

/** What a written frame shows: a frame of its part of the head (from 0), or a frame of the reel. */
export type OutputFrame =
  | { readonly kind: HeadPart; readonly index: number }
  | { readonly kind: 'reel'; readonly index: number }

/** The written frames in order: the head's parts, then the reel. */
export type OutputTimeline = {
  /** Frames of each part of the head. */
  readonly parts: Readonly<Record<HeadPart, number>>
  /** Frames before the reel's first. */
  readonly headFrames: number
  readonly reelFrames: number
  readonly frames: number
}

/** Frames of a whole number of seconds: at 24000/1001 a second of film is 24 frames. */
const framesOf = (seconds: number, rate: Rate): number =>
  seconds * Math.round(framesPerSecond(rate))

export const outputTimeline = (
  { head }: Pick<TransferSettings, 'head'>,
  rate: Rate,
  reelFrames: number,
): OutputTimeline => {
  const parts = {
    bars: framesOf(head.bars, rate),
    slate: framesOf(head.slate, rate),
    leader: framesOf(head.leader, rate),
  }
  const headFrames = parts.bars + parts.slate + parts.leader
  return { parts, headFrames, reelFrames, frames: headFrames + reelFrames }
}

/** What the written frame `at` (0…frames − 1) shows. */
export const outputFrameAt = ({ parts, headFrames }: OutputTimeline, at: number): OutputFrame => {
  let before = 0
  for (const kind of HEAD_PARTS) {
    if (at < before + parts[kind]) return { kind, index: at - before }
    before += parts[kind]
  }
  return { kind: 'reel', index: at - headFrames }
}

/** A run of written frames: `first` up to and not including `end`. */
export type OutputRange = { readonly first: number; readonly end: number }

/** The written frames of part `part` (1…`of`), as even as whole frames can be; all parts make up all. */
export const partRange = (frames: number, part: number, of: number): OutputRange => ({
  first: Math.floor(((part - 1) * frames) / of),
  end: Math.floor((part * frames) / of),
})
