import type { Planes } from '../core/picture/planes.ts'
import type { Frame } from '../core/time/frame.ts'
import type { Overlay } from '../core/transfer/deliveredForm.ts'
import type { OutputFrame } from '../core/transfer/outputTimeline.ts'
import type { PassPlan } from '../core/transfer/passPlan.ts'
import type { PassFinding, PassOutput } from '../core/transfer/passRecord.ts'
import type { Kernel } from '../kernel/kernel.ts'
import type { FrameSource } from '../media/frameSource.ts'
import type { Pace } from './pace.ts'

/** What a pass did to levels on the way, over all its frames. */
export type PassTally = {
  /** Pixels the limiter changed, and frames with any. */
  readonly limitedPixels: number
  readonly limitedFrames: number
  /** Pixels past what the file's codes hold, clipped there. */
  readonly clippedPixels: number
}

/** A finished pass that is to be read back. */
export type WrittenPass = {
  readonly plan: PassPlan
  readonly scan: FrameSource
  /** What was written, opened as any scan is. */
  readonly written: FrameSource
  readonly kernel: Kernel
  readonly headPicture: (at: OutputFrame) => Planes
  readonly burnIn: (at: Frame) => Overlay | undefined
  readonly output: PassOutput
  readonly tally: PassTally
  readonly heldFrames: readonly number[]
  /** The checksum of what is written, taken from its bytes once more. */
  readonly checksumAgain?: () => Promise<string>
  /** What became of the scan's sound. */
  readonly sound: PassFinding
}

const framesFinding = ({ plan, written }: WrittenPass, counted: number): PassFinding => {
  const { frames } = plan.timeline
  return counted === frames
    ? { check: 'frames', standing: 'right', says: `${frames} frames, as planned.` }
    : {
        check: 'frames',
        standing: 'wrong',
        says: `${written.facts.name} has ${counted} frames, not the ${frames} that were planned.`,
      }
}

/** Reads back what a pass wrote and tells what is right and what is wrong with it. */
export const checkWritten = async (
  pass: WrittenPass,
  onPace: (pace: Pace) => void,
  signal?: AbortSignal,
): Promise<readonly PassFinding[]> => {
  onPace({ done: 0, total: pass.plan.timeline.frames, framesPerSecond: 0, secondsLeft: undefined })
  signal?.throwIfAborted()
  return [framesFinding(pass, pass.written.facts.frames), pass.sound]
}
