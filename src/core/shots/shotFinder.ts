import { frame } from '../time/frame.ts'
import { blankRunAt, boundariesOfBlank } from './blankRun.ts'
import type { Boundary } from './boundary.ts'
import { backAfterFlash, cutAt } from './cutAt.ts'
import { dissolveOfRun, mixedSpan } from './dissolveRun.ts'
import type { FrameSignature } from './frameSignature.ts'
import { createFrameWindow, isBlank } from './frameWindow.ts'

/** Finds shot changes in frames given one after another. */
export type ShotFinder = {
  /** Takes the next frame; gives back what has become certain, in order. */
  readonly push: (signature: FrameSignature) => readonly Boundary[]
  /** Ends the reel; gives back the rest. */
  readonly finish: () => readonly Boundary[]
}

/** Frames looked ahead before anything is decided about a frame. */
const AHEAD = 50

/** Frames held: what is ahead, and as much behind for fades and dissolves. */
const HELD = 3 * AHEAD

/** Mixed frames may be missing here and there within a dissolve. */
const LONGEST_GAP = 3

/** Where neighbouring frames change more than this, every frame is tried as a mixture. */
const RESTLESS = 0.03

/** What moves right after a gradual change belongs to it, unless a cut is quite clear. */
const JUST_AFTER = 4

type MixedRun = { first: number; last: number; span: number }

/**
 * The shot finder. Hard cuts and changes through a blank picture are decided first, dissolves in
 * the stretches between them. Memory is bounded: some 150 small signatures.
 */
export const createShotFinder = (): ShotFinder => {
  const window = createFrameWindow(HELD)
  /** The next frame to decide about, and the first frame of the shot it belongs to. */
  let next = 0
  let shotStart = 0
  let isAfterGradual = false
  let mixed: MixedRun | undefined
  let settled: Boundary[] = []

  const accept = (boundary: Boundary): void => {
    settled.push(boundary)
    isAfterGradual = boundary.kind !== 'cut'
    shotStart = boundary.last + (isAfterGradual ? 1 : 0)
  }
  /** Closes a run of mixed frames: a dissolve, if the pictures around it say so. */
  const closeMixed = (to: number): void => {
    const run = mixed
    mixed = undefined
    if (!run || run.last - run.first < 1) return
    const dissolve = dissolveOfRun(window, run, shotStart, to)
    if (dissolve) accept(dissolve)
  }
  const noteMixed = (n: number, to: number): void => {
    const span = mixedSpan(window, n, shotStart, to)
    if (span > 0) {
      if (mixed && n - mixed.last <= LONGEST_GAP)
        mixed = { first: mixed.first, last: n, span: Math.max(mixed.span, span) }
      else {
        closeMixed(n)
        mixed = { first: n, last: n, span }
      }
    } else if (mixed && n - mixed.last > Math.max(LONGEST_GAP, mixed.span)) closeMixed(n + 1)
  }
  /** The nearest frame ahead where a shot certainly ends: nothing past it may be mixed in. */
  const shotEnd = (n: number): number => {
    const end = Math.min(window.end(), n + AHEAD)
    for (let at = n + 1; at < end; at++)
      if (isBlank(window.at(at)) || (window.change(at - 1, at) >= 0.6 && cutAt(window, at) > 0))
        return at
    return end
  }
  const decide = (): void => {
    const n = next
    if (isBlank(window.at(n))) {
      const run = blankRunAt(window, n)
      const isOpen = run.to === window.end() && run.to - run.from < AHEAD
      closeMixed(n)
      if (!isOpen || isFinished)
        for (const boundary of boundariesOfBlank(window, run)) accept(boundary)
      next = Math.max(n + 1, run.to)
      return
    }
    if (n > 0 && !isBlank(window.at(n - 1))) {
      const confidence = cutAt(window, n)
      if (confidence > (n - shotStart < JUST_AFTER && isAfterGradual ? 0.85 : 0)) {
        const back = backAfterFlash(window, n)
        if (back !== undefined) {
          next = back + 1
          return
        }
        closeMixed(n)
        accept({ kind: 'cut', first: frame(n), last: frame(n), confidence })
        next = n + 1
        return
      }
    }
    if (n % 2 === 0 || window.change(n - 1, n) > RESTLESS) noteMixed(n, shotEnd(n))
    next = n + 1
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
      while (next + AHEAD < window.end()) decide()
      return take()
    },
    finish: () => {
      isFinished = true
      while (next < window.end()) decide()
      closeMixed(window.end())
      return take()
    },
  }
}
