import { GRID_HEIGHT, GRID_WIDTH } from './frameSignature.ts'
import type { PictureArea } from './pictureArea.ts'
import type { SeenFrame } from './seenFrame.ts'

/** So much of the area must be seen in both pictures. */
const LEAST_OVERLAP = 0.3

/** How far aside of a sweep's direction it may stray, in cells. */
const STRAY = 2

/** A picture turned so that the sweep runs along rows, each row about its own mean. */
type Rows = { readonly values: Float32Array; readonly length: number; readonly count: number }

const rowsOf = (luma: Float32Array, area: PictureArea, isTilt: boolean): Rows => {
  const length = isTilt ? area.bottom - area.top : area.right - area.left
  const count = isTilt ? area.right - area.left : area.bottom - area.top
  const values = new Float32Array(GRID_WIDTH * GRID_HEIGHT)
  const start = area.top * GRID_WIDTH + area.left
  const [along, across] = isTilt ? [GRID_WIDTH, 1] : [1, GRID_WIDTH]
  for (let row = 0; row < count; row++) {
    let sum = 0
    for (let k = 0; k < length; k++) sum += luma[start + row * across + k * along] as number
    for (let k = 0; k < length; k++)
      values[row * length + k] = (luma[start + row * across + k * along] as number) - sum / length
  }
  return { values, length, count }
}

/** The best correlation of two pictures over all shifts along their rows. */
const bestAlongRows = (a: Rows, b: Rows): number => {
  const { length, count } = a
  const farthest = Math.floor(length * (1 - LEAST_OVERLAP))
  let best = 0
  for (let shift = -farthest; shift <= farthest; shift++)
    for (let stray = -STRAY; stray <= STRAY; stray++) {
      let ab = 0
      let aa = 0
      let bb = 0
      const from = Math.max(0, -shift)
      const to = Math.min(length, length - shift)
      for (let row = Math.max(0, -stray); row < Math.min(count, count - stray); row += 2)
        for (let k = from; k < to; k++) {
          const u = a.values[row * length + k] as number
          const v = b.values[(row + stray) * length + k + shift] as number
          ab += u * v
          aa += u * u
          bb += v * v
        }
      if (ab > 0) best = Math.max(best, ab / Math.sqrt(aa * bb))
    }
  return best
}

/**
 * How well one picture is the other one seen after a sweep of the camera, 0…1: the best
 * correlation over shifts of up to two thirds of the picture, along or across. What a sweep does
 * not change, such as a sky above and the ground below for a pan, is left out of it.
 */
export const sweep = (a: SeenFrame, b: SeenFrame, area: PictureArea): number =>
  Math.max(
    bestAlongRows(rowsOf(a.luma, area, false), rowsOf(b.luma, area, false)),
    bestAlongRows(rowsOf(a.luma, area, true), rowsOf(b.luma, area, true)),
  )
