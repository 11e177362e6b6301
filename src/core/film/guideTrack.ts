import { framesPerSecond, type Rate } from '../time/rate.ts'

/** A sound file that runs with the picture while it is worked on; it is not transferred. */
export type GuideTrack = {
  readonly name: string
  /** Frames a second of the picture that the sound was made for: at that speed its pitch is right. */
  readonly madeFor: Rate
  /** What is heard at `seconds` of the file belongs to picture `frame` of the reel. */
  readonly mark: { readonly frame: number; readonly seconds: number }
}

/** Where in the sound a frame's picture begins, in seconds of the file; it may be before 0. */
export const guideSeconds = ({ madeFor, mark }: GuideTrack, frame: number): number =>
  mark.seconds + (frame - mark.frame) / framesPerSecond(madeFor)

/** The frame of the reel that runs at so many seconds of the sound, with its fraction. */
export const guideFrame = ({ madeFor, mark }: GuideTrack, seconds: number): number =>
  mark.frame + (seconds - mark.seconds) * framesPerSecond(madeFor)

/** How many times faster than it was made the sound runs where pictures run at `rate`. */
export const guideSpeed = ({ madeFor }: GuideTrack, rate: Rate): number =>
  framesPerSecond(rate) / framesPerSecond(madeFor)
