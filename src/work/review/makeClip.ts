import type { Job, Reel } from '../../core/job/job.ts'
import { shrinkPlanes, shrunkSize } from '../../core/picture/shrinkPlanes.ts'
import { framesPerSecond } from '../../core/time/rate.ts'
import { type PassPlan, passPlan } from '../../core/transfer/passPlan.ts'
import { INITIAL_TRANSFER } from '../../core/transfer/transferSettings.ts'
import type { Kernel } from '../../kernel/kernel.ts'
import { dataAddress } from '../../media/dataAddress.ts'
import type { FrameSource } from '../../media/frameSource.ts'
import { MediaError } from '../../media/mediaError.ts'
import { deliverFrames } from '../deliverFrames.ts'

/** Pixels along the longer side of a clip, at most. */
const SIZE = 640

/** A clip as a page takes it. */
export type CodedClip = { readonly type: string; readonly bytes: Uint8Array }

/** How pictures of a plan, 4:2:0 of 8 bits, become a small file; undefined where it cannot be made. */
export type ClipEncoder = (
  plan: PassPlan,
  pictures: AsyncGenerator<Uint8Array<ArrayBuffer>>,
) => Promise<CodedClip | undefined>

/** What of a reel is shown in motion: from `first` on, at most so many seconds of it. */
export type ClipRequest = {
  readonly job: Job
  readonly reel: Reel
  readonly first: number
  readonly end: number
  readonly seconds: number
}

/** The plan of the same reel `times` smaller: graded and framed whole, then made small. */
const smallPlan = (plan: PassPlan, times: number): PassPlan => {
  const { media } = plan.reel
  const size = shrunkSize(media.width, media.height, times)
  const settings = { ...plan.settings, format: 'h264' } as const
  return { ...plan, settings, reel: { ...plan.reel, media: { ...media, ...size } } }
}

/**
 * A cue in motion as a `data:` address, graded and framed as it would be delivered, without sound;
 * null where the scan is damaged there or nothing here encodes video.
 */
export const makeClip = async (
  { job, reel, first, end, seconds }: ClipRequest,
  { source, kernel }: { readonly source: FrameSource; readonly kernel: Kernel },
  encode: ClipEncoder,
  signal?: AbortSignal,
): Promise<string | null> => {
  // As pictures, of any size: odd sides are made even when it is made small.
  const settings = { ...INITIAL_TRANSFER, format: 'png', carriesSound: false } as const
  const plan = passPlan(job, reel.id, settings)
  if (!plan.ok) return null
  const { width, height } = reel.media
  const times = Math.max(1, Math.ceil(Math.max(width, height) / SIZE))
  const form = {
    kind: 'planes',
    matrix: plan.value.coding.matrix,
    depth: 8,
    layout: '420',
  } as const
  const nothing = {
    headPicture: () => {
      throw new Error('Bug: a clip has no head')
    },
    burnIn: () => undefined,
  }
  const last = Math.min(end, first + Math.max(1, Math.round(seconds * framesPerSecond(reel.rate))))
  const work = { plan: plan.value, source, kernel, form, ...nothing }
  async function* pictures(): AsyncGenerator<Uint8Array<ArrayBuffer>> {
    for await (const { bytes } of deliverFrames(work, { first, end: last }, signal))
      yield shrinkPlanes({ width, height, bytes }, times).bytes
  }
  try {
    const clip = await encode(smallPlan(plan.value, times), pictures())
    return clip ? dataAddress(clip.type, clip.bytes) : null
  } catch (error) {
    if (error instanceof MediaError) return null
    throw error
  }
}
