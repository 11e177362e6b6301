import { createPrintTaker, type ReelPrints } from '../core/conform/reelPrints.ts'
import type { Boundary } from '../core/shots/boundary.ts'
import { frameSignature } from '../core/shots/frameSignature.ts'
import { createShotFinder } from '../core/shots/shotFinder.ts'
import { frame } from '../core/time/frame.ts'
import type { FrameSource } from '../media/frameSource.ts'
import { createPaceKeeper, type Pace } from './pace.ts'

const NEWS_EVERY_MS = 100

/**
 * Reads a whole reel once for what finds its pictures again on another scan, and where its shots
 * change, telling how far it is as it goes. Rejects when stopped by `signal`.
 */
export const fingerprintReel = async (
  source: FrameSource,
  onPace: (pace: Pace) => void,
  signal?: AbortSignal,
): Promise<ReelPrints> => {
  const { frames: expected } = source.facts
  const taker = createPrintTaker(expected)
  const finder = createShotFinder()
  const pace = createPaceKeeper(expected, () => performance.now())
  const boundaries: Boundary[] = []
  let frames = 0
  let lastNews = performance.now()
  for await (const { planes } of source.readRange(frame(0), frame(expected), signal)) {
    const signature = frameSignature(planes)
    taker.push(signature)
    boundaries.push(...finder.push(signature))
    frames++
    if (performance.now() - lastNews < NEWS_EVERY_MS) continue
    lastNews = performance.now()
    onPace(pace(frames))
  }
  signal?.throwIfAborted()
  boundaries.push(...finder.finish())
  onPace(pace(frames))
  return taker.finish(boundaries)
}
