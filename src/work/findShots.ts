import type { Boundary } from '../core/shots/boundary.ts'
import { frameSignature } from '../core/shots/frameSignature.ts'
import { createShotFinder } from '../core/shots/shotFinder.ts'
import { frame } from '../core/time/frame.ts'
import type { FrameSource } from '../media/frameSource.ts'
import { createPaceKeeper, type Pace } from './pace.ts'

export type ShotNews = {
  readonly pace: Pace
  /** Boundaries settled since the last news, in order. */
  readonly boundaries: readonly Boundary[]
}

export type ShotsFound = { readonly boundaries: readonly Boundary[]; readonly frames: number }

const NEWS_EVERY_MS = 100

/** Reads a whole reel and finds its shot changes, telling how far it is as it goes. */
export const findShots = async (
  source: FrameSource,
  onNews: (news: ShotNews) => void,
  signal?: AbortSignal,
): Promise<ShotsFound> => {
  const finder = createShotFinder()
  const pace = createPaceKeeper(source.facts.frames, () => performance.now())
  const all: Boundary[] = []
  let pending: Boundary[] = []
  let frames = 0
  let lastNews = 0
  const tell = (): void => {
    onNews({ pace: pace(frames), boundaries: pending })
    pending = []
    lastNews = performance.now()
  }
  const keep = (settled: readonly Boundary[]): void => {
    all.push(...settled)
    pending.push(...settled)
  }
  for await (const { planes } of source.readRange(frame(0), frame(source.facts.frames), signal)) {
    keep(finder.push(frameSignature(planes)))
    frames++
    if (pending.length > 0 || performance.now() - lastNews > NEWS_EVERY_MS) tell()
  }
  signal?.throwIfAborted()
  keep(finder.finish())
  tell()
  return { boundaries: all, frames }
}
