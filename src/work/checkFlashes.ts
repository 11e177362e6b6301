import { createFlashGatherer } from '../core/flashes/flashGatherer.ts'
import type { FlashReport } from '../core/flashes/flashReport.ts'
import type { Coding } from '../core/picture/planes.ts'
import type { Rate } from '../core/time/rate.ts'
import { EBU_R103_V3 } from '../core/tolerance/profile.ts'
import type { Kernel } from '../kernel/kernel.ts'
import type { FrameSource } from '../media/frameSource.ts'
import { type CueCheck, checkCue } from './checkTolerance.ts'

/** Cues that follow one another, to be watched for flashes. */
export type FlashesRequest = {
  readonly checks: readonly CueCheck[]
  readonly coding: Coding
  readonly rate: Rate
}

/** Levels are measured on the way: unfiltered, as they are not asked for. */
const UNFILTERED = { ...EBU_R103_V3, filtered: false }

/**
 * Watches every frame of the cues as it would be delivered, across their cuts. `onFrame` is told how
 * many are done. Undefined of no frames.
 */
export const checkFlashes = async (
  source: FrameSource,
  kernel: Kernel,
  { checks, coding, rate }: FlashesRequest,
  onFrame: (done: number) => void,
  signal?: AbortSignal,
): Promise<FlashReport | undefined> => {
  const { width, height } = source.facts
  const flashes = createFlashGatherer(width, height, rate)
  let done = 0
  const tell = () => onFrame(++done)
  for (const check of checks)
    await checkCue(source, kernel, check, coding, UNFILTERED, tell, signal, undefined, flashes)
  return flashes.report()
}
