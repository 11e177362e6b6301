import type { FlashGatherer } from '../core/flashes/flashGatherer.ts'
import type { Cue } from '../core/job/job.ts'
import { valuesAt } from '../core/job/valuesAt.ts'
import type { Coding, Planes } from '../core/picture/planes.ts'
import type { Frame } from '../core/time/frame.ts'
import type { ToleranceProfile } from '../core/tolerance/profile.ts'
import { createVerdictGatherer, type Verdict } from '../core/tolerance/verdict.ts'
import type { ColourCounter, Kernel } from '../kernel/kernel.ts'
import type { FrameSource } from '../media/frameSource.ts'
import type { FramesCheck } from './reelCalls.ts'

/** One cue to be measured: its frames are `cue.first` up to and not including `end`. */
export type CueCheck = {
  readonly cue: Cue
  readonly previous: Cue | undefined
  readonly end: Frame
}

/**
 * Measures every frame of a cue as it would be delivered. `onFrame` is told after each. `colours`
 * counts those of all frames that have the cue's own values: not those of its ramp. `flashes` takes
 * every frame: the next cue may go on with it, as flashes go on across cuts.
 */
export const checkCue = async (
  source: FrameSource,
  kernel: Kernel,
  { cue, previous, end }: CueCheck,
  coding: Coding,
  profile: ToleranceProfile,
  onFrame: () => void,
  signal?: AbortSignal,
  colours?: ColourCounter,
  flashes?: FlashGatherer,
): Promise<Verdict | undefined> => {
  const gatherer = createVerdictGatherer(profile)
  for await (const { frame, planes } of source.readRange(cue.first, end, signal)) {
    const { grade, framing } = valuesAt(cue, previous, frame)
    const input = { planes, coding, grade, framing }
    const isOwn = previous === undefined || frame - cue.first >= cue.ramp
    const counted = isOwn ? colours : undefined
    const levels = kernel.measureLevels(input, coding.matrix, profile, counted, flashes?.cells)
    gatherer.add(frame, levels)
    flashes?.add(frame)
    onFrame()
  }
  signal?.throwIfAborted()
  return gatherer.verdict()
}

/** Measures some frames of a cue, read by `read`, as they would be delivered. */
export const checkFrames = async (
  read: (frame: Frame) => Promise<Planes>,
  kernel: Kernel,
  { check: { cue, previous }, frames, coding, profile }: FramesCheck,
): Promise<Verdict | undefined> => {
  const gatherer = createVerdictGatherer(profile)
  for (const frame of frames) {
    const planes = await read(frame)
    const { grade, framing } = valuesAt(cue, previous, frame)
    const input = { planes, coding, grade, framing }
    gatherer.add(frame, kernel.measureLevels(input, coding.matrix, profile))
  }
  return gatherer.verdict()
}
