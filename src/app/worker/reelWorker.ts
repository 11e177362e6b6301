import { openMedia } from '../../media/browser/openMedia.ts'
import type { ReelCalls } from '../../work/reelCalls.ts'
import { reelHandlers } from '../../work/reelHandlers.ts'
import { type Port, serveCalls } from '../../work/rpc.ts'
import { kernelHere } from './kernelHere.ts'

serveCalls<ReelCalls>(self as unknown as Port, reelHandlers(openMedia, kernelHere))
