import { type CameraMove, cameraMove, moved, NO_MOVE } from './cameraMove.ts'
import type { FrameWindow } from './frameWindow.ts'
import { mixtureOf } from './mixture.ts'

/** Frames `from` up to and not including `to`. */
export type Stretch = { readonly from: number; readonly to: number }

/** How much of the second picture a frame shows. */
export type Share = {
  /** The frame, and the share of the second picture in it: 0…1 between the two pictures. */
  readonly x: number
  readonly y: number
  /** How well the mixture explains the frame, 0…1. */
  readonly weight: number
  readonly unexplained: number
  readonly alike: number
}

/** Frames over which the camera's speed beside a dissolve is measured. */
const SPEED_FRAMES = 5

/** At most about so many frames of a stretch are unmixed. */
const POINTS = 24

/** Every second row of cells is enough to unmix a frame. */
const ROW_STEP = 2

/** Shares are kept in this range: what lies far outside says no more than that it is outside. */
const LEAST_SHARE = -0.6
const MOST_SHARE = 1.6

const LEAST_WEIGHT = 0.02

const times = ({ dx, dy, zoom }: CameraMove, by: number): CameraMove => ({
  dx: dx * by,
  dy: dy * by,
  zoom: zoom * by,
})

const speedBetween = (window: FrameWindow, from: number, to: number): CameraMove => {
  const [a, b] = [window.at(from), window.at(to)]
  if (!a || !b || to <= from) return NO_MOVE
  return times(cameraMove(a.luma, b.luma, window.area()), 1 / (to - from))
}

/**
 * The frames of `part` as mixtures of frame a and frame b. Each of the two is moved on the way
 * its camera moved just outside of a…b, within `shot`, so that a pan that goes on does not hide
 * the mixture.
 */
export const dissolveShares = (
  window: FrameWindow,
  a: number,
  b: number,
  part: Stretch,
  shot: Stretch,
): readonly Share[] => {
  const area = window.area()
  const [one, other] = [window.at(a), window.at(b)]
  if (!one || !other) return []
  const speedA = speedBetween(window, Math.max(shot.from, a - SPEED_FRAMES), a)
  const speedB = speedBetween(window, b, Math.min(shot.to - 1, b + SPEED_FRAMES))
  const movedA = new Float32Array(one.luma.length)
  const movedB = new Float32Array(one.luma.length)
  const shares: Share[] = []
  const step = Math.max(1, Math.round((part.to - part.from) / POINTS))
  for (let n = part.from; n < part.to; n += step) {
    const here = window.at(n)
    if (!here) continue
    moved(one.luma, area, times(speedA, n - a), movedA, ROW_STEP)
    moved(other.luma, area, times(speedB, n - b), movedB, ROW_STEP)
    const mixture = mixtureOf(here.luma, movedA, movedB, area, ROW_STEP)
    if (!mixture) continue
    const { share, unexplained, alike } = mixture
    const y = Math.min(MOST_SHARE, Math.max(LEAST_SHARE, share))
    shares.push({ x: n, y, weight: Math.max(LEAST_WEIGHT, 1 - unexplained), unexplained, alike })
  }
  return shares
}
