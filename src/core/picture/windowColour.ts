import type { Triple } from '../colour/triple.ts'
import { decodeWindow } from './decodeWindow.ts'
import type { Coding, Planes } from './planes.ts'

const meanOf = (levels: Float64Array): number =>
  levels.reduce((sum, level) => sum + level, 0) / levels.length

/**
 * The mean colour of a square of a frame, R′G′B′ after decode and base, before the grade. `x` and
 * `y` are its middle on the scan, 0…1 across and down; `size` is its side in pixels, odd. What of
 * the square lies off the scan is left out.
 */
export const windowColour = (
  planes: Planes,
  coding: Coding,
  x: number,
  y: number,
  size: number,
): Triple => {
  const reach = (size - 1) / 2
  const along = (place: number, most: number) => {
    const middle = Math.min(most - 1, Math.max(0, Math.floor(place * most)))
    return [Math.max(0, middle - reach), Math.min(most, middle + reach + 1)] as const
  }
  const [left, right] = along(x, planes.width)
  const [top, bottom] = along(y, planes.height)
  const { r, g, b } = decodeWindow(planes, coding, { left, right, top, bottom })
  return [meanOf(r), meanOf(g), meanOf(b)]
}
