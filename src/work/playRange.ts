import type { Planes } from '../core/picture/planes.ts'
import { frame as asFrame, type Frame } from '../core/time/frame.ts'
import type { FrameSource } from '../media/frameSource.ts'

/** What to play: from `from`, every `step`th frame (negative backwards), inside `first`…`end`. */
export type PlayPlan = {
  readonly from: Frame
  readonly step: number
  readonly first: Frame
  readonly end: Frame
  /** Whether to begin again at `first` after the last frame (or at the last going backwards). */
  readonly isLoop: boolean
}

export type PlayedFrame = { readonly frame: Frame; readonly planes: Planes }

const BACKWARD_CHUNK = 24

async function* forwards(source: FrameSource, plan: PlayPlan, signal: AbortSignal) {
  let from = plan.from
  do {
    for await (const played of source.readRange(from, plan.end, signal))
      if ((played.frame - from) % plan.step === 0) yield played
    from = plan.first
  } while (plan.isLoop && !signal.aborted)
}

async function* backwards(source: FrameSource, plan: PlayPlan, signal: AbortSignal) {
  const stride = -plan.step
  let last = plan.from
  do {
    for (let high = last + 1; high > plan.first; ) {
      const low = Math.max(plan.first, high - BACKWARD_CHUNK)
      const chunk: PlayedFrame[] = []
      for await (const played of source.readRange(asFrame(low), asFrame(high), signal))
        if ((last - played.frame) % stride === 0) chunk.push(played)
      yield* chunk.reverse()
      high = low
    }
    last = asFrame(plan.end - 1)
  } while (plan.isLoop && !signal.aborted)
}

/** The frames of a plan in the order they are to be shown. Ends at once when `signal` aborts. */
export const playRange = (
  source: FrameSource,
  plan: PlayPlan,
  signal: AbortSignal,
): AsyncGenerator<PlayedFrame> =>
  plan.step > 0 ? forwards(source, plan, signal) : backwards(source, plan, signal)
