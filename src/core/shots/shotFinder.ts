import { frame } from '../time/frame.ts'
import { blankRunAt, boundariesOfBlank } from './blankRun.ts'
import type { Boundary } from './boundary.ts'
import { backAfterFlash, cutAt } from './cutAt.ts'
import { dissolveAround } from './dissolveAround.ts'
import type { FrameSignature } from './frameSignature.ts'
import { createFrameWindow } from './frameWindow.ts'
import { isBlank } from './seenFrame.ts'

/** Finds shot changes in frames given one after another. */
export type ShotFinder = {
  /** Takes the next frame; gives back what has become certain, in order. */
  readonly push: (signature: FrameSignature) => readonly Boundary[]
  /** Ends the reel; gives back the rest. */
  readonly finish: () => readonly Boundary[]
}

/** Frames looked ahead before anything is decided about a frame. */
const AHEAD = 50

/** Frames looked ahead past a blank picture, for the fade in that may follow it. */
const AHEAD_OF_FADE = 75

/** Frames held: what is ahead, and as much behind for fades and dissolves. */
const HELD = 240

/** Frames to each side that are compared to find a dissolve, and how often. */
const SPANS = [
  [4, 4],
  [8, 9],
  [16, 19],
  [30, 37],
] as const

/** Two frames more alike than this (r²) are not on the two sides of a dissolve. */
const MOST_ALIKE = 0.85

/** Two frames that change less than this are not either. */
const LEAST_CHANGE = 0.3

/** What moves right after a gradual change belongs to it, unless a cut is quite clear. */
const JUST_AFTER = 4

/**
 * The shot finder. Hard cuts and changes through a blank picture are decided first, dissolves in
 * the stretches between them. Memory is bounded: some 240 small signatures.
 */
export const createShotFinder = (): ShotFinder => {
  const window = createFrameWindow(HELD)
  /** The next frame to decide about, and the first frame of the shot it belongs to. */
  let next = 0
  let shotStart = 0
  let isAfterGradual = false
  let settled: Boundary[] = []

  const accept = (boundary: Boundary): void => {
    settled.push(boundary)
    isAfterGradual = boundary.kind !== 'cut'
    shotStart = boundary.last + (isAfterGradual ? 1 : 0)
  }
  const dissolveAt = (n: number): Boundary | undefined => {
    let end: number | undefined
    for (const [half, step] of SPANS) {
      if (n % step !== 0) continue
      end ??= shotEnd(n)
      const a = Math.max(shotStart, n - half)
      const b = Math.min(end - 1, n + half)
      if (n - a < 2 || b - n < 2) continue
      if (window.alike(a, b) > MOST_ALIKE || window.change(a, b) < LEAST_CHANGE) continue
      const dissolve = dissolveAround(window, n, half, { from: shotStart, to: end })
      if (dissolve) return dissolve
    }
    return undefined
  }
  /** The nearest frame ahead where a shot certainly ends: nothing past it may be mixed in. */
  const shotEnd = (n: number): number => {
    const end = Math.min(window.end(), n + AHEAD)
    for (let at = n + 1; at < end; at++)
      if (isBlank(window.at(at)) || (window.change(at - 1, at) >= 0.6 && cutAt(window, at) > 0))
        return at
    return end
  }
  const decideBlank = (n: number): void => {
    const run = blankRunAt(window, n)
    const isOpen = run.to === window.end() && run.to - run.from < AHEAD
    if (!isFinished && (isOpen || (run.to < window.end() && window.end() - run.to < AHEAD_OF_FADE)))
      return
    for (const boundary of boundariesOfBlank(window, run)) accept(boundary)
    next = run.to
  }
  /** Decides about the next frame; leaves `next` where it is to wait for more frames. */
  const decide = (): void => {
    const n = next
    if (isBlank(window.at(n))) {
      decideBlank(n)
      return
    }
    next = n + 1
    if (n > 0 && !isBlank(window.at(n - 1))) {
      const confidence = cutAt(window, n)
      if (confidence > (n - shotStart < JUST_AFTER && isAfterGradual ? 0.85 : 0)) {
        const back = backAfterFlash(window, n)
        if (back === undefined) accept({ kind: 'cut', first: frame(n), last: frame(n), confidence })
        else next = back + 1
        return
      }
    }
    const dissolve = dissolveAt(n)
    if (!dissolve) return
    accept(dissolve)
    next = Math.max(next, dissolve.last + 1)
  }
  let isFinished = false
  const take = (): readonly Boundary[] => {
    const found = settled
    settled = []
    return found
  }
  return {
    push: (signature) => {
      window.push(signature)
      for (let from = -1; next > from && next + AHEAD < window.end(); ) {
        from = next
        decide()
      }
      return take()
    },
    finish: () => {
      isFinished = true
      while (next < window.end()) decide()
      return take()
    },
  }
}
