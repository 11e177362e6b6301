import type { FrameWindow } from './frameWindow.ts'
import { mixtureOf } from './mixture.ts'
import { isBlank } from './seenFrame.ts'
import { sweep } from './sweep.ts'

/** A change this large between neighbouring frames is a cut if nothing speaks against it. */
const CLEAR_CHANGE = 0.6

/** A smaller change is a cut only where the pictures around it are calm: doubtful. */
const LEAST_CHANGE = 0.38

/** What a shot's own motion may amount to beside a clear and beside a small change. */
const CLEAR_MARGIN = 0.22
const SMALL_MARGIN = 0.28

/** Two frames of one scene change less than this, whatever came between them. */
const SAME_SCENE = 0.35

/** Frames a flash may last. */
const LONGEST_FLASH = 8

/** A frame this much brighter than what is around it is a flash, however long. */
const FLASH_LIFT = 0.08

/** How lively the pictures are on one side: the larger of the two changes next to the cut. */
const activity = (window: FrameWindow, a: number, b: number): number => {
  if (isBlank(window.at(a)) || isBlank(window.at(b))) return 0
  return window.change(a, b)
}

/**
 * The first frame after a short disturbance (flash, dirt, a torn frame) that shows the scene of
 * frame n − 1 again; undefined where the picture does not come back. Up to two frames may show
 * anything; a longer disturbance must be a flash of light.
 */
export const backAfterFlash = (window: FrameWindow, n: number): number | undefined => {
  const before = window.at(n - 1)
  if (!before) return undefined
  for (let back = n + 1; back <= n + LONGEST_FLASH; back++) {
    const after = window.at(back)
    if (!after) return undefined
    const isShort = back - n <= 2
    const isLit = (window.at(back - 1)?.mean ?? 0) > before.mean + FLASH_LIFT
    if (!isShort && !isLit) return undefined
    if (isBlank(after)) continue
    if (window.change(n - 1, back) < SAME_SCENE) return back
  }
  return undefined
}

/** Whether frame n, between two shots, is a mixture of the frames beside it. */
const isBlended = (window: FrameWindow, n: number): boolean => {
  const [before, here, after] = [window.at(n - 1), window.at(n), window.at(n + 1)]
  if (!before || !here || !after) return false
  const mixture = mixtureOf(here.luma, before.luma, after.luma, window.area())
  if (!mixture || mixture.unexplained > 0.3) return false
  return mixture.share > 0.1 && mixture.share < 0.9
}

/** Where the pictures beside a change are livelier than this, the camera may be sweeping. */
const LIVELY = 0.25

/** Two pictures that go together this well after a sweep are one scene; so well by chance. */
const SWEPT = 0.8
const UNRELATED = 0.6

const sweepOver = (window: FrameWindow, n: number): number => {
  const [before, after] = [window.at(n - 1), window.at(n)]
  return before && after ? sweep(before, after, window.area()) : 0
}

const clamp01 = (value: number): number => Math.min(1, Math.max(0, value))

/**
 * How sure it is that a shot ends with frame n − 1 and another begins with n, neither being
 * blank; 0 where it is not a cut.
 */
export const cutAt = (window: FrameWindow, n: number): number => {
  const change = window.change(n - 1, n)
  if (change < LEAST_CHANGE) return 0
  const before = Math.max(activity(window, n - 2, n - 1), activity(window, n - 3, n - 2))
  const soon = activity(window, n, n + 1)
  const after = Math.max(
    soon >= CLEAR_CHANGE && isBlended(window, n) ? 0 : soon,
    activity(window, n + 1, n + 2),
  )
  const across = Math.min(
    window.at(n + 1) ? window.change(n - 1, n + 1) : 1,
    window.at(n - 2) ? window.change(n - 2, n) : 1,
  )
  if (across < SAME_SCENE) return 0
  const calmest = Math.min(before, after)
  const liveliest = Math.max(before, after)
  const isClear = change >= CLEAR_CHANGE
  const margin = change - (isClear ? (calmest + liveliest) / 2 : liveliest)
  const needed = isClear ? CLEAR_MARGIN : SMALL_MARGIN
  if (margin < needed) return 0
  const doubt = liveliest > LIVELY ? sweepOver(window, n) : 0
  if (doubt > SWEPT) return 0
  const less = Math.max(0, doubt - UNRELATED)
  if (!isClear) return 0.4 - less + 0.3 * clamp01((margin - SMALL_MARGIN) / 0.3)
  return 0.7 - less + 0.3 * clamp01((margin - CLEAR_MARGIN) / 0.45)
}
