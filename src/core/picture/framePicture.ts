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
 * Beside a hard edge along an axis the filter goes past both sides of it, by up to 2/27 (7.4 %) of
 * the step, and where detail is as fine as pixels by more: its negative weights add up to at most
 * 0.14 along an axis. That is part of the delivered picture and measured like the rest of it.
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
  const rows = new Int32Array(down.length)
  const read = (plane: Float64Array): number => {
    let sum = 0
    for (let j = 0; j < rows.length; j++) {
      const row = at(rows, j) * width
      let line = 0
      for (let k = 0; k < columns.length; k++)
        line += at(across, k) * at(plane, row + at(columns, k))
      sum += at(down, j) * line
    }
    return sum
  }
  const out = rgbPicture(width, height)
  seenPlaces(map, width, height, (pixel, column, row) => {
    repeatEnds(columns, cubicTaps(column, widths.across, across), width)
    repeatEnds(rows, cubicTaps(row, widths.down, down), height)
    out.r[pixel] = read(picture.r)
    out.g[pixel] = read(picture.g)
    out.b[pixel] = read(picture.b)
  })
  return out
}

/** Fills `places` with whole places from `first` on, those past an end of `count` being that end. */
const repeatEnds = (places: Int32Array, first: number, count: number): void => {
  for (let k = 0; k < places.length; k++) places[k] = Math.min(Math.max(first + k, 0), count - 1)
}
