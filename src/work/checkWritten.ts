import { createFlashGatherer } from '../core/flashes/flashGatherer.ts'
import type { Planes } from '../core/picture/planes.ts'
import { type Frame, frame } from '../core/time/frame.ts'
import type { Overlay } from '../core/transfer/deliveredForm.ts'
import type { OutputFrame } from '../core/transfer/outputTimeline.ts'
import type { PassPlan } from '../core/transfer/passPlan.ts'
import type { PassFinding, PassOutput } from '../core/transfer/passRecord.ts'
import type { Kernel } from '../kernel/kernel.ts'
import type { FrameSource } from '../media/frameSource.ts'
import { MediaError } from '../media/mediaError.ts'
import { createPaceKeeper, type Pace } from './pace.ts'
import { createCueComparison } from './written/compareCues.ts'
import { cueFrames } from './written/cueFrames.ts'
import {
  checksumFinding,
  durationFinding,
  limitingFinding,
  tagsFinding,
} from './written/fileFindings.ts'
import { flashFinding } from './written/flashFinding.ts'
import { createWrittenTolerance } from './written/toleranceOfWritten.ts'

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

const framesFinding = (
  { plan, written }: WrittenPass,
  counted: number,
  broken: string | undefined,
): PassFinding => {
  const { frames } = plan.timeline
  if (broken !== undefined) return { check: 'frames', standing: 'wrong', says: broken }
  return counted === frames && written.facts.frames === frames
    ? { check: 'frames', standing: 'right', says: `${frames} frames, as planned.` }
    : {
        check: 'frames',
        standing: 'wrong',
        says: `${written.facts.name} has ${Math.max(counted, written.facts.frames)} frames, not the ${frames} that were planned.`,
      }
}

/**
 * Reads back what a pass wrote, every frame once, and tells what is right and what is wrong with
 * it: how many frames there are, what cues begin with, tolerance, flashes, tags, duration, checksum.
 */
export const checkWritten = async (
  pass: WrittenPass,
  onPace: (pace: Pace) => void,
  signal?: AbortSignal,
): Promise<readonly PassFinding[]> => {
  const { plan, written } = pass
  const { headFrames, frames } = plan.timeline
  const places = cueFrames(plan.cues, plan.reel.frames)
  const cues = createCueComparison(pass)
  const { width, height, frames: writtenFrames } = written.facts
  const flashes = createFlashGatherer(width, height, plan.reel.rate)
  const tolerance = createWrittenTolerance(pass, flashes.cells)
  const pace = createPaceKeeper(frames, () => performance.now())
  let counted = 0
  let broken: string | undefined
  try {
    const end = frame(writtenFrames)
    for await (const { planes } of written.readRange(frame(0), end, signal)) {
      const at = counted - headFrames
      counted++
      if (at >= 0 && at < plan.reel.frames) {
        tolerance.add(frame(at), planes)
        flashes.add(frame(at))
        const place = places.get(at)
        if (place) await cues.add(place, planes)
      }
      onPace(pace(counted))
    }
  } catch (error) {
    if (!(error instanceof MediaError)) throw error
    broken = error.problem.says
  }
  signal?.throwIfAborted()
  const measured = tolerance.finding()
  const watched = flashes.report()
  return [
    framesFinding(pass, counted, broken),
    ...(broken === undefined ? [cues.finding()] : []),
    ...(measured ? [measured] : []),
    limitingFinding(pass),
    ...(watched ? [flashFinding(watched)] : []),
    tagsFinding(pass),
    durationFinding(pass, counted),
    pass.sound,
    await checksumFinding(pass),
  ]
}
