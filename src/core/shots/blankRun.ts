import { frame } from '../time/frame.ts'
import type { Boundary } from './boundary.ts'
import { type FrameWindow, isBlank } from './frameWindow.ts'

/** Frames without a picture: `from` up to and not including `to`. */
export type BlankRun = { readonly from: number; readonly to: number }

/** A fade is followed back at most this far. */
const LONGEST_FADE = 70

/** Blank pictures this many frames long are a shot of their own. */
const OWN_SHOT = 12

/** Between two blank runs of one scene at most this long, nothing happened but a flash. */
const LONGEST_DISTURBANCE = 12

const SAME_SCENE = 0.35

/** Below this mean level a blank frame is black. */
const BLACK_BELOW = 0.12

/** Each frame of a fade has this much more contrast than the one nearer to the blank. */
const LEAST_RISE = 1.015

/**
 * The frame farthest from a blank run up to which contrast keeps rising, `step` −1 before it, +1
 * after it: where the fade begins or ends. Equal to `edge` where the picture is cut off at once.
 */
const fadeEdge = (window: FrameWindow, edge: number, step: 1 | -1): number => {
  let n = edge
  let still = 0
  let top = window.at(edge)?.deviation ?? 0
  let farthest = edge
  for (let i = 0; i < LONGEST_FADE; i++) {
    const here = window.at(n + step)
    if (!here) break
    n += step
    if (here.deviation > top * LEAST_RISE) {
      if (
        window.change(Math.min(n, n - step), Math.max(n, n - step)) > 0.8 &&
        here.deviation > 0.04
      )
        break
      top = here.deviation
      farthest = n
      still = 0
    } else if (++still > 1) break
  }
  return farthest
}

/** A frame this much unlike the blank it fades to or from is no longer part of it. */
const VISIBLE = 0.0015

/** Part of the full contrast that a fade takes off before it counts as begun. */
const BEGUN = 0.985

/** How far a frame is from the middle of a blank run in level and contrast. */
const distance = (window: FrameWindow, n: number, core: number): number => {
  const [frame, blank] = [window.at(n), window.at(core)]
  if (!frame || !blank) return 0
  return Math.max(Math.abs(frame.mean - blank.mean), Math.abs(frame.deviation - blank.deviation))
}

/** The first and last frame that differ because of a fade whose full picture is at `edge`. */
const fadeSpan = (
  window: FrameWindow,
  edge: number,
  blankEdge: number,
  core: number,
  step: 1 | -1,
): { readonly full: number; readonly dark: number } => {
  const top = window.at(edge)?.deviation ?? 0
  let full = edge
  while (full - step !== blankEdge && (window.at(full - step)?.deviation ?? 0) > top * BEGUN)
    full -= step
  let dark = blankEdge
  while (dark !== core && distance(window, dark, core) > VISIBLE) dark -= step
  return { full: full - step, dark: dark + step }
}

/** A picture on a plain bright ground, such as a title card, has the level of the ground. */
const isOnGround = (window: FrameWindow, n: number, blank: number): boolean =>
  Math.abs((window.at(n)?.mean ?? 0) - (window.at(blank)?.mean ?? 0)) < 0.05

/** What a blank run amounts to; empty where the scene is the same on both sides. */
export const boundariesOfBlank = (window: FrameWindow, run: BlankRun): readonly Boundary[] => {
  const hasBefore = window.at(run.from - 1) !== undefined
  const hasAfter = window.at(run.to) !== undefined
  const left = hasBefore ? fadeEdge(window, run.from - 1, -1) : run.from
  const right = hasAfter ? fadeEdge(window, run.to, 1) : run.to - 1
  const length = run.to - run.from
  if (
    hasBefore &&
    hasAfter &&
    length <= LONGEST_DISTURBANCE &&
    window.change(left, right) < SAME_SCENE
  )
    return []
  const core = hasBefore ? (hasAfter ? (run.from + run.to - 1) >> 1 : run.to - 1) : run.from
  const isBlack = (window.at(core)?.mean ?? 0) < BLACK_BELOW
  const isFadeOut = hasBefore && run.from - 1 - left >= 2
  const isFadeIn = hasAfter && right - run.to >= 2
  const out = fadeSpan(window, left, run.from, core, -1)
  const back = fadeSpan(window, right, run.to - 1, core, 1)
  if (!isBlack && hasBefore && hasAfter && (isFadeOut || isFadeIn) && length < 2 * OWN_SHOT)
    return [
      {
        kind: 'dip',
        first: frame(isFadeOut ? out.full : run.from),
        last: frame(isFadeIn ? back.full : run.to - 1),
        confidence: 0.8,
      },
    ]
  const found: Boundary[] = []
  const cut = (n: number, confidence: number): Boundary => ({
    kind: 'cut',
    first: frame(n),
    last: frame(n),
    confidence,
  })
  if (isFadeOut) {
    if (isBlack || !isOnGround(window, left, core))
      found.push({
        kind: 'fade-out',
        first: frame(out.full),
        last: frame(out.dark),
        confidence: 0.85,
      })
  } else if (hasBefore && length >= OWN_SHOT) found.push(cut(run.from, 0.9))
  if (isFadeIn) {
    if (isBlack || !isOnGround(window, right, core))
      found.push({
        kind: 'fade-in',
        first: frame(back.dark),
        last: frame(back.full),
        confidence: 0.85,
      })
  } else if (hasAfter && (hasBefore || length >= 3))
    found.push(cut(run.to, length >= 3 ? 0.9 : 0.7))
  return found
}

/** The blank run that begins at n, as far as the window shows; its end may still be open. */
export const blankRunAt = (window: FrameWindow, n: number): BlankRun => {
  let to = n
  while (to < window.end() && isBlank(window.at(to))) to++
  return { from: n, to }
}
