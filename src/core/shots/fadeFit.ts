import type { FrameWindow } from './frameWindow.ts'
import { isBlank, type SeenFrame } from './seenFrame.ts'

/** A fade as its contrast tells it, counted in frames from the blank picture. */
export type Fade = {
  /** Frames from the blank picture to the first full one; 1 where it is cut off at once. */
  readonly length: number
  /** Root of the mean squared distance from a straight fade, as part of the contrast. */
  readonly error: number
}

/** A fade is followed at most this far. */
const LONGEST_FADE = 75

/** Frames of full contrast beside a fade that must fit as well: at least, and as part of it. */
const LEAST_FULL = 4
const FULL_PART = 0.5

/** What a fade may be cut off at, as parts of its length: at black, a third, half way. */
const CUT_OFF = [0, 0.5, 1] as const

/**
 * How a fade may run: straight in the signal, or as powers of it, as fades made in light are. A
 * bent one must fit this much better.
 */
const POWERS = [0.6, 1.5, 2] as const
const BENT = 1.2

const SHAPES = [
  ...CUT_OFF.map((part) => [part, 1] as const),
  ...POWERS.map((power) => [0, power] as const),
]

/** Frames this different are not of one fade, where both show a picture of some contrast. */
const OTHER_SCENE = 0.7
const PICTURE = 0.04

/** How far a picture is from a blank one of this level: a straight fade makes it a straight line. */
const fromBlank = (picture: SeenFrame, level: number): number =>
  Math.hypot(picture.mean - level, picture.deviation)

/** Distances of the frames from a blank one outwards, up to where the shot ends. */
const distances = (window: FrameWindow, blank: number, step: 1 | -1): number[] => {
  const values: number[] = []
  const level = window.at(blank)?.mean ?? 0
  const most = LONGEST_FADE * (1 + FULL_PART)
  let contrast = 0
  for (let n = blank + step; values.length < most; n += step) {
    const here = window.at(n)
    if (!here || (isBlank(here) && contrast > PICTURE)) break
    const least = Math.min(contrast, here.deviation)
    if (least > PICTURE && window.change(n, n - step) > OTHER_SCENE) break
    contrast = here.deviation
    values.push(fromBlank(here, level))
  }
  return values
}

/**
 * The straight fade that fits the distances from blank outwards from frame `blank` (`step` −1: a fade out
 * that ends there, +1: a fade in that begins there) best, by least squares.
 */
export const fadeFit = (window: FrameWindow, blank: number, step: 1 | -1): Fade => {
  const values = distances(window, blank, step)
  let best: Fade = { length: 1, error: 1 }
  for (let length = 1; length <= Math.min(LONGEST_FADE, values.length); length++) {
    const count = Math.min(
      values.length,
      length + Math.max(LEAST_FULL, Math.round(length * FULL_PART)),
    )
    for (const [part, power] of length > 2 ? SHAPES : [[0, 1] as const]) {
      const offset = part * length
      let vb = 0
      let bb = 0
      let vv = 0
      for (let i = 0; i < count; i++) {
        const value = values[i] as number
        const b = Math.min(1, ((i + 1 + offset) / (length + offset)) ** power)
        vb += value * b
        bb += b * b
        vv += value * value
      }
      const error = Math.sqrt(Math.max(0, vv - (vb * vb) / bb) / vv) * (power === 1 ? 1 : BENT)
      if (error < best.error - 0.002) best = { length, error }
    }
  }
  return best
}
