import type { Planes } from '../picture/planes.ts'
import { drawMiddle, fillRectangle, greyPicture, planesOfGrey, timesHigh } from './greyPicture.ts'

/** One frame of a leader: `left` frames (1 and up) before the first frame of the reel. */
export type LeaderFrame = {
  readonly width: number
  readonly height: number
  readonly pixelAspect: number
  readonly left: number
  /** Frames of a second. */
  readonly second: number
  /** Frames of the whole leader. */
  readonly length: number
}

const GROUND = 0.12
const FIGURE = 0.75
const BAR = 0.4
const BLACK = 0

/** The sync mark's side as part of the height: a twelfth of the area at most. */
const MARK = 0.28

/** How many seconds before the reel the sync mark stands, and the leader it needs. */
const MARK_SECONDS = 2
const SHORTEST_MARKED = 3

/**
 * A leader that counts whole seconds down to the reel: the seconds left, a bar that shortens as
 * each passes, and the frames left. Its last second is black. Where it is three seconds long or
 * more, the frame two seconds before the reel has a white mark for sound to be laid to: common
 * practice, no published source. The mark is a small part of the picture, so that nothing flashes.
 */
export const leaderPicture = (frame: LeaderFrame): Planes => {
  const { width, height, pixelAspect, left, second, length } = frame
  if (left <= second) return planesOfGrey(greyPicture(width, height, pixelAspect, BLACK))
  const picture = greyPicture(width, height, pixelAspect, GROUND)
  const middle = { x: width / 2, y: height / 2 }
  const isMarked = left === MARK_SECONDS * second && length >= SHORTEST_MARKED * second
  if (isMarked) {
    const side = { width: (MARK * height) / pixelAspect, height: MARK * height }
    const corner = { left: middle.x - side.width / 2, top: middle.y - side.height / 2 }
    fillRectangle(picture, { ...corner, ...side }, 1)
    drawMiddle(picture, `${MARK_SECONDS} s`, middle, timesHigh(height / 8), BLACK)
    return planesOfGrey(picture)
  }
  drawMiddle(picture, String(Math.ceil(left / second)), middle, timesHigh(height / 3), FIGURE)
  const gone = ((left - 1) % second) + 1
  const bar = { width: (0.5 * width * gone) / second, height: Math.max(2, height / 90) }
  fillRectangle(picture, { left: width / 4, top: 0.78 * height, ...bar }, BAR)
  drawMiddle(picture, `−${left}`, { x: middle.x, y: 0.86 * height }, timesHigh(height / 22), BAR)
  return planesOfGrey(picture)
}
