import { at } from '../base/assert.ts'
import { cubicTaps, filterWidths, tapReach } from './cubicTaps.ts'
import { type Framing, framingMap, IDENTITY_FRAMING, sameFraming } from './framing.ts'
import { type RgbPicture, rgbPicture } from './rgbPicture.ts'
import { seenPlaces } from './seenPlaces.ts'

/**
 * The delivered picture: each pixel read from the graded one at its place under `framing`, by Keys'
 * cubic along columns and rows (`cubicTaps`), made wider where the picture is made smaller. Past the
 * scan's edge its last pixels are repeated. Where it is blanked and where the view leaves the
 * scanned picture it is black (0). `pixelAspect`: width of a pixel over its height.
 *
 * Beside a hard edge the filter goes past both sides of it, by up to 2/27 (7.4 %) of the step, and
 * where detail is as fine as pixels by more: its negative weights add up to at most 1/8 along an
 * axis. That is part of the delivered picture and measured like the rest of it.
 */
export const framePicture = (
  picture: RgbPicture,
  framing: Framing,
  pixelAspect = 1,
): RgbPicture => {
  if (sameFraming(framing, IDENTITY_FRAMING)) return picture
  const { width, height } = picture
  const map = framingMap(framing, width, height, pixelAspect)
  const widths = filterWidths(map)
  const across = new Float64Array(2 * tapReach(widths.across))
  const down = new Float64Array(2 * tapReach(widths.down))
  const columns = new Int32Array(across.length)
  const out = rgbPicture(width, height)
  seenPlaces(map, width, height, (pixel, column, row) => {
    const left = cubicTaps(column, widths.across, across)
    const top = cubicTaps(row, widths.down, down)
    for (let k = 0; k < columns.length; k++) columns[k] = within(left + k, width)
    for (const plane of ['r', 'g', 'b'] as const) {
      let sum = 0
      for (let j = 0; j < down.length; j++) {
        const start = within(top + j, height) * width
        let line = 0
        for (let k = 0; k < across.length; k++)
          line += at(across, k) * at(picture[plane], start + at(columns, k))
        sum += at(down, j) * line
      }
      out[plane][pixel] = sum
    }
  })
  return out
}

const within = (place: number, count: number): number => Math.min(Math.max(place, 0), count - 1)
