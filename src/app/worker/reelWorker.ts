import { openMedia } from '../../media/browser/openMedia.ts'
import type { ReelCalls } from '../../work/reelCalls.ts'
import { reelHandlers } from '../../work/reelHandlers.ts'
import type { ClipEncoder } from '../../work/review/makeClip.ts'
import { type Port, serveCalls } from '../../work/rpc.ts'
import { kernelHere } from './kernelHere.ts'

/** Loaded once a clip is wanted: few reels are sent to a reviewer. */
const encodeClip: ClipEncoder = async (plan, pictures) =>
  (await import('../../media/browser/encodeClip.ts')).encodeClip(plan, pictures)

serveCalls<ReelCalls>(self as unknown as Port, reelHandlers(openMedia, kernelHere, encodeClip))
