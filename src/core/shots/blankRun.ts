import { frame } from '../time/frame.ts'
import type { Boundary } from './boundary.ts'
import { fadeFit } from './fadeFit.ts'
import type { FrameWindow } from './frameWindow.ts'
import { isBlank } from './seenFrame.ts'

/** Frames without a picture: `from` up to and not including `to`. */
export type BlankRun = { readonly from: number; readonly to: number }

/** Blank pictures this many frames long are a shot of their own. */
const OWN_SHOT = 12

/** Between two blank runs of one scene at most this long, nothing happened but a flash. */
const LONGEST_DISTURBANCE = 12

const SAME_SCENE = 0.35

/** Below this mean level a blank frame is black. */
const BLACK_BELOW = 0.12

/** A frame this much unlike the blank it fades to or from is no longer part of it. */
const VISIBLE = 0.0015

/** A fade fits a straight one at least this well, as part of the contrast. */
const MOST_ERROR = 0.2

/** How far a frame is from the middle of a blank run in level and contrast. */
const distance = (window: FrameWindow, n: number, core: number): number => {
  const [frame, blank] = [window.at(n), window.at(core)]
  if (!frame || !blank) return 0
  return Math.max(Math.abs(frame.mean - blank.mean), Math.abs(frame.deviation - blank.deviation))
}

/** What lies on one side of a blank run, `step` −1 before it, +1 after it. */
type Side = {
  /** The nearest frame at full contrast. */
  readonly full: number
  /** The frame of the fade that is nearest to the blank, which may look blank itself. */
  readonly dark: number
  readonly isFade: boolean
  /** Whether at least one frame is part picture, part blank. */
  readonly isRamp: boolean
  readonly confidence: number
}

const sideOf = (window: FrameWindow, edge: number, core: number, step: 1 | -1): Side => {
  let dark = edge
  while (dark !== core && distance(window, dark, core) > VISIBLE) dark -= step
  const { length, error } = fadeFit(window, dark, step)
  const full = dark + length * step
  return {
    full,
    dark: dark + step,
    isRamp: length > 1,
    isFade: length > 2 && error < MOST_ERROR,
    confidence: Math.min(0.95, Math.max(0.5, 1 - 2 * error)),
  }
}

/** A picture on a plain bright ground, such as a title card, has the level of the ground. */
const isOnGround = (window: FrameWindow, n: number, blank: number): boolean =>
  Math.abs((window.at(n)?.mean ?? 0) - (window.at(blank)?.mean ?? 0)) < 0.05

/** What a blank run amounts to; empty where the scene is the same on both sides. */
export const boundariesOfBlank = (window: FrameWindow, run: BlankRun): readonly Boundary[] => {
  const previous = window.at(run.from - 1)
  const hasBefore = previous !== undefined && !isBlank(previous)
  const hasAfter = window.at(run.to) !== undefined
  const core = hasBefore ? (hasAfter ? (run.from + run.to - 1) >> 1 : run.to - 1) : run.from
  const before = hasBefore ? sideOf(window, run.from, core, -1) : undefined
  const after = hasAfter ? sideOf(window, run.to - 1, core, 1) : undefined
  const length = run.to - run.from
  if (
    before &&
    after &&
    length <= LONGEST_DISTURBANCE &&
    window.change(before.full, after.full) < SAME_SCENE
  )
    return []
  const isBlack = (window.at(core)?.mean ?? 0) < BLACK_BELOW
  const isDip =
    before?.isFade || after?.isFade || (before?.isRamp && after?.isRamp && length < OWN_SHOT)
  if (!isBlack && before && after && isDip && length < 2 * OWN_SHOT)
    return [
      {
        kind: 'dip',
        first: frame(before.isRamp ? before.full + 1 : run.from),
        last: frame(after.isRamp ? after.full - 1 : run.to - 1),
        confidence: Math.min(before.confidence, after.confidence),
      },
    ]
  const found: Boundary[] = []
  const cut = (n: number, confidence: number): Boundary => ({
    kind: 'cut',
    first: frame(n),
    last: frame(n),
    confidence,
  })
  if (before?.isFade) {
    const { full, dark, confidence } = before
    if (isBlack || !isOnGround(window, full, core))
      found.push({ kind: 'fade-out', first: frame(full + 1), last: frame(dark), confidence })
  } else if (before && length >= OWN_SHOT) found.push(cut(run.from, 0.9))
  if (after?.isFade) {
    const { full, dark, confidence } = after
    if (isBlack || !isOnGround(window, full, core))
      found.push({ kind: 'fade-in', first: frame(dark), last: frame(full - 1), confidence })
  } else if (after && (before || length >= 3)) found.push(cut(run.to, length >= 3 ? 0.9 : 0.7))
  return found
}

/** The blank run that begins at n, as far as the window shows; its end may still be open. */
export const blankRunAt = (window: FrameWindow, n: number): BlankRun => {
  let to = n
  while (to < window.end() && isBlank(window.at(to))) to++
  return { from: n, to }
}
