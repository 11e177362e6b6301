import { formOf } from '../../core/transfer/formOf.ts'
import type { OutputRange } from '../../core/transfer/outputTimeline.ts'
import type { PassPlan } from '../../core/transfer/passPlan.ts'
import type { Kernel } from '../../kernel/kernel.ts'
import type { FrameSource } from '../../media/frameSource.ts'
import { type DeliveredFrame, deliverFrames } from '../deliverFrames.ts'
import { headPicturesOf } from '../headPictures.ts'
import type { Gate } from './gate.ts'
import type { DoneSegment, PassStore } from './passStore.ts'
import type { SegmentWriter } from './segmentWriter.ts'

export type SegmentWork = {
  readonly plan: PassPlan
  readonly source: FrameSource
  readonly kernel: Kernel
  readonly segments: readonly OutputRange[]
  /** Which of them are written already. */
  readonly whole: ReadonlyMap<number, DoneSegment>
  readonly writerFor: (index: number) => SegmentWriter
  readonly store: PassStore
  readonly gate: Gate
  /** Rejects where the scan is no longer there: a frame is not damaged then, but gone. */
  readonly checkScan: () => Promise<void>
  readonly onFrame: (heldFrame: number | undefined) => void
  readonly signal: AbortSignal
}

/** Runs of segments that are not written yet: frames of a run are decoded one after the other. */
const missingRuns = ({ segments, whole }: SegmentWork): readonly (readonly number[])[] => {
  const runs: number[][] = []
  for (const index of segments.keys()) {
    if (whole.has(index)) continue
    const last = runs.at(-1)
    if (last?.at(-1) === index - 1) last.push(index)
    else runs.push([index])
  }
  return runs
}

const writeSegment = async (
  work: SegmentWork,
  index: number,
  frames: AsyncGenerator<DeliveredFrame>,
): Promise<DoneSegment> => {
  const { segments, writerFor, store, gate, checkScan, onFrame, signal } = work
  const range = segments[index]
  if (!range) throw new Error(`Bug: there is no segment ${index}`)
  const counted = { limitedPixels: 0, limitedFrames: 0, clippedPixels: 0 }
  const heldFrames: number[] = []
  const writer = writerFor(index)
  try {
    for (let at = range.first; at < range.end; at++) {
      await gate.open(signal)
      const next = await frames.next()
      if (next.done || next.value.at !== at) throw new Error(`Bug: frame ${at} was not made`)
      const { bytes, limited, clipped, reelFrame, damage } = next.value
      if (damage && reelFrame !== undefined) {
        await checkScan()
        heldFrames.push(reelFrame)
      }
      counted.limitedPixels += limited
      counted.limitedFrames += limited > 0 ? 1 : 0
      counted.clippedPixels += clipped
      await writer.add(bytes, at)
      onFrame(damage && reelFrame)
    }
    const { files, video } = await writer.finish()
    const done = { ...range, files, heldFrames, ...counted }
    await store.putSegment(index, done, video)
    return done
  } catch (error) {
    await writer.abandon()
    throw error
  }
}

/** Writes the segments that are missing; answers with all of them, in order. */
export const writeSegments = async (work: SegmentWork): Promise<readonly DoneSegment[]> => {
  const { plan, source, kernel, segments, whole, signal } = work
  const done = new Map(whole)
  const deliver = { plan, source, kernel, form: formOf(plan), ...headPicturesOf(plan) }
  for (const run of missingRuns(work)) {
    const first = segments[run[0] ?? 0]?.first ?? 0
    const end = segments[run.at(-1) ?? 0]?.end ?? 0
    const frames = deliverFrames(deliver, { first, end }, signal)
    try {
      for (const index of run) done.set(index, await writeSegment(work, index, frames))
    } finally {
      await frames.return(undefined)
    }
  }
  return [...done.entries()].sort(([a], [b]) => a - b).map(([, each]) => each)
}
