import type { Problem } from '../core/base/problem.ts'
import { IDENTITY_GRADE } from '../core/colour/grade.ts'
import { cueIndexAt } from '../core/job/cueList.ts'
import { valuesAt } from '../core/job/valuesAt.ts'
import { IDENTITY_FRAMING } from '../core/picture/framing.ts'
import type { Planes } from '../core/picture/planes.ts'
import { type Frame, frame } from '../core/time/frame.ts'
import type { Delivered, DeliveredForm, Overlay } from '../core/transfer/deliveredForm.ts'
import {
  type OutputFrame,
  type OutputRange,
  outputFrameAt,
} from '../core/transfer/outputTimeline.ts'
import { passLimiter } from '../core/transfer/passLimiter.ts'
import type { PassPlan } from '../core/transfer/passPlan.ts'
import type { Kernel } from '../kernel/kernel.ts'
import type { FrameSource } from '../media/frameSource.ts'
import { readDamaged } from './readDamaged.ts'

/** What the frames of a pass are made with. */
export type DeliverWork = {
  readonly plan: PassPlan
  readonly source: FrameSource
  readonly kernel: Kernel
  readonly form: DeliveredForm
  /** A frame of the head as full-range R′G′B′ of 16 bits. */
  readonly headPicture: (at: OutputFrame) => Planes
  /** What is burnt into a frame of the reel, where the settings ask for it. */
  readonly burnIn: (at: Frame) => Overlay | undefined
  /** Memory for the next frame, of the form's size; each has its own where this is left out. */
  readonly room?: () => Uint8Array<ArrayBuffer>
}

export type DeliveredFrame = Delivered & {
  /** The written frame, from 0 with the head. */
  readonly at: number
  /** The frame of the reel; undefined in the head. */
  readonly reelFrame: Frame | undefined
  /** What was wrong with it, where the frame before is shown in its place. */
  readonly damage: Problem | undefined
}

/** Head pictures are their own levels: R′G′B′ as they stand. */
const AS_MADE = { matrix: 'bt709', range: 'full' } as const

/** The written frames of a range in order, laid out for the file. */
export async function* deliverFrames(
  { plan, source, kernel, form, headPicture, burnIn, room }: DeliverWork,
  { first, end }: OutputRange,
  signal?: AbortSignal,
): AsyncGenerator<DeliveredFrame> {
  const { timeline, coding, cues, settings } = plan
  const { onDamage } = settings
  const { headFrames } = timeline
  for (let at = first; at < Math.min(end, headFrames); at++) {
    signal?.throwIfAborted()
    const planes = headPicture(outputFrameAt(timeline, at))
    const input = {
      planes,
      coding: AS_MADE,
      grade: IDENTITY_GRADE,
      framing: IDENTITY_FRAMING,
    }
    yield {
      ...kernel.deliver(input, { form }, room?.()),
      at,
      reelFrame: undefined,
      damage: undefined,
    }
  }
  if (end <= headFrames) return
  const limiter = passLimiter(plan)
  const range = {
    from: frame(Math.max(first, headFrames) - headFrames),
    end: frame(end - headFrames),
    onDamage,
  }
  for await (const { frame: reelFrame, planes, damage } of readDamaged(source, range, signal)) {
    const index = cueIndexAt(cues, reelFrame)
    const cue = cues[index]
    if (!cue) throw new Error(`Bug: frame ${reelFrame} belongs to no cue`)
    const { grade, framing } = valuesAt(cue, cues[index - 1], reelFrame)
    const overlay = burnIn(reelFrame)
    const delivered = kernel.deliver(
      { planes, coding, grade, framing },
      { form, ...(limiter && { limiter }), ...(overlay && { overlay }) },
      room?.(),
    )
    yield { ...delivered, at: headFrames + reelFrame, reelFrame, damage }
  }
}
