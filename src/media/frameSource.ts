import type { Planes } from '../core/picture/planes.ts'
import type { Frame } from '../core/time/frame.ts'
import type { MediaFacts } from './mediaFacts.ts'

/**
 * A reel's pictures, addressed by rank of presentation time: frame 0 is the first picture shown,
 * whatever its time stamp. Frames are native code values, never converted.
 */
export type FrameSource = {
  readonly facts: MediaFacts
  /** One frame. Rejects with a `MediaError` where it cannot be decoded. */
  readonly read: (frame: Frame) => Promise<Planes>
  /** Frames `from` up to and not including `to`, in order, decoding ahead. */
  readonly readRange: (
    from: Frame,
    to: Frame,
    signal?: AbortSignal,
  ) => AsyncGenerator<{ readonly frame: Frame; readonly planes: Planes }>
  readonly close: () => void
}
