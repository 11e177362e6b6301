import type { Planes } from '../core/picture/planes.ts'
import { type Frame, frame } from '../core/time/frame.ts'
import type { Overlay } from '../core/transfer/deliveredForm.ts'
import type { OutputFrame } from '../core/transfer/outputTimeline.ts'
import type { PassPlan } from '../core/transfer/passPlan.ts'
import { PASS_CHECKS, type PassFinding, type PassOutput } from '../core/transfer/passRecord.ts'
import type { Kernel } from '../kernel/kernel.ts'
import type { FrameSource } from '../media/frameSource.ts'
import { MediaError } from '../media/mediaError.ts'
import { createPaceKeeper, type Pace } from './pace.ts'
import { readDamaged } from './readDamaged.ts'
import { createCueComparison } from './written/compareCues.ts'
import {
  checksumFinding,
  durationFinding,
  limitingFinding,
  tagsFinding,
} from './written/fileFindings.ts'
import { type BrokenFrame, framesFinding } from './written/framesFinding.ts'
import type { FrameWatcher } from './written/frameWatcher.ts'
import { watchLevels } from './written/watchLevels.ts'

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

/** Frames that cannot be decoded, at most, before reading is given up. */
const MOST_BROKEN = 20

/** What looks at each frame of the reel as it is read back: another look is added here. */
const WATCHERS: readonly ((pass: WrittenPass) => FrameWatcher)[] = [
  createCueComparison,
  watchLevels,
]

/**
 * Reads every written frame once, in order, and shows those of the reel to the watchers. Tells
 * those that cannot be decoded; they are counted, as the file says that they are there.
 */
const readBack = async (
  { plan, written }: WrittenPass,
  watchers: readonly FrameWatcher[],
  onFrame: (done: number) => void,
  signal?: AbortSignal,
): Promise<readonly BrokenFrame[]> => {
  const { headFrames, reelFrames } = plan.timeline
  const broken: BrokenFrame[] = []
  const range = {
    from: frame(0),
    end: frame(written.facts.frames),
    onDamage: 'hold',
  } as const
  let next = 0
  try {
    for await (const { planes, damage } of readDamaged(written, range, signal)) {
      const at = next - headFrames
      if (damage) broken.push({ at: next, says: damage.says })
      else if (at >= 0 && at < reelFrames)
        for (const watcher of watchers) await watcher.add(frame(at), planes)
      next++
      onFrame(next)
      if (broken.length >= MOST_BROKEN) break
    }
  } catch (error) {
    if (!(error instanceof MediaError)) throw error
    broken.push({ at: next, says: error.problem.says })
  }
  return broken
}

/**
 * Reads back what a pass wrote, every frame once, and tells what is right and what is wrong with
 * it, in the order of `PASS_CHECKS`.
 */
export const checkWritten = async (
  pass: WrittenPass,
  onPace: (pace: Pace) => void,
  signal?: AbortSignal,
): Promise<readonly PassFinding[]> => {
  const { plan, written } = pass
  const pace = createPaceKeeper(plan.timeline.frames, () => performance.now())
  const watchers = WATCHERS.map((create) => create(pass))
  const broken = await readBack(pass, watchers, (done) => onPace(pace(done)), signal)
  signal?.throwIfAborted()
  const counted = written.facts.frames
  const findings = [
    framesFinding(pass, counted, broken),
    ...watchers.flatMap((watcher) => watcher.findings()),
    limitingFinding(pass),
    tagsFinding(pass),
    durationFinding(pass, counted),
    pass.sound,
    await checksumFinding(pass),
  ]
  return PASS_CHECKS.flatMap((check) => findings.filter((found) => found.check === check))
}
