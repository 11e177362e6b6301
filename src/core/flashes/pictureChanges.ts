import type { Rate } from '../time/rate.ts'
import { allowedSpacing, framesWithinSecond, isTooLarge, MOST_CHANGES } from './flashLimits.ts'

/** What the changes of the picture as a whole come to on one frame. */
export type PictureTally = {
  /** Changes within the last second, each of more than a quarter of the picture. */
  readonly changes: number
  /** The largest area of those, in pixels. */
  readonly area: number
  /** The first of them; the frame itself where there are none. */
  readonly first: number
}

type Change = { readonly frame: number; readonly area: number }

/** Whether seven opposing changes have leading edges as far apart as is always allowed. */
const areSpaced = (changes: readonly Change[], spacing: number): boolean =>
  changes.every(({ frame }, i) => {
    const before = changes[i - 2]
    return i % 2 === 0 || !before || frame - before.frame >= spacing
  })

/**
 * Counts the frames on which more than a quarter of a picture of `whole` pixels changes one way, and
 * next the other way, as fast cuts do: other parts of it may change each time. One change a frame.
 */
export const createPictureChanges = (whole: number, rate: Rate) => {
  const size = framesWithinSecond(rate)
  const spacing = allowedSpacing(rate)
  let recent: readonly Change[] = []
  /** Which way the last change went; 0 where it went both ways, or there was none. */
  let last = 0
  return (frame: number, up: number, down: number): PictureTally => {
    const isUp = isTooLarge(up, whole) && last !== 1
    const isDown = isTooLarge(down, whole) && last !== -1
    recent = recent.filter((change) => frame - change.frame < size)
    if (isUp || isDown) {
      const area = Math.max(isUp ? up : 0, isDown ? down : 0)
      recent = [...recent, { frame, area }]
      last = isUp && isDown ? 0 : isUp ? 1 : -1
    }
    const isAllowed = recent.length === MOST_CHANGES + 1 && areSpaced(recent, spacing)
    return {
      changes: isAllowed ? MOST_CHANGES : recent.length,
      area: recent.reduce((most, { area }) => Math.max(most, area), 0),
      first: recent[0]?.frame ?? frame,
    }
  }
}
