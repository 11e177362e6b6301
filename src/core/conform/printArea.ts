import type { PictureArea } from '../shots/pictureArea.ts'
import { PRINT_HEIGHT, PRINT_WIDTH } from './reelPrints.ts'

/** A rectangle of print cells; `right` and `bottom` are outside. */
export type PrintArea = PictureArea

const WHOLE: PrintArea = { left: 0, top: 0, right: PRINT_WIDTH, bottom: PRINT_HEIGHT }

/** Less than this many cells along a side do not tell pictures apart. */
const LEAST_SIDE = 8

/** The cells that show picture on both reels; all where these are too few. */
export const commonArea = (a: PictureArea, b: PictureArea): PrintArea => {
  const area = {
    left: Math.ceil(Math.max(a.left, b.left) / 2),
    top: Math.ceil(Math.max(a.top, b.top) / 2),
    right: Math.floor(Math.min(a.right, b.right) / 2),
    bottom: Math.floor(Math.min(a.bottom, b.bottom) / 2),
  }
  const isLarge = area.right - area.left >= LEAST_SIDE && area.bottom - area.top >= LEAST_SIDE
  return isLarge ? area : WHOLE
}
