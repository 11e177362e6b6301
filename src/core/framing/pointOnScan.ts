import { type Framing, framingMap } from '../picture/framing.ts'

/** A place on a picture: 0…1 across from its left and down from its top. */
export type PicturePoint = { readonly x: number; readonly y: number }

/** The map of pictures one high and `aspect` wide; a place on them is counted from their corner. */
const unitMap = (framing: Framing, aspect: number) => framingMap(framing, aspect, 1)

/**
 * The place on the scan that a framing shows at a place of the delivered picture; undefined where
 * it shows none of the scan. `aspect`: width over height of both as shown.
 */
export const pointOnScan = (
  framing: Framing,
  aspect: number,
  { x, y }: PicturePoint,
): PicturePoint | undefined => {
  const map = unitMap(framing, aspect)
  const [column, row] = [x * aspect - 0.5, y - 0.5]
  const across = (map.xx * column + map.xy * row + map.offsetX + 0.5) / aspect
  const down = map.yx * column + map.yy * row + map.offsetY + 0.5
  return across >= 0 && across <= 1 && down >= 0 && down <= 1 ? { x: across, y: down } : undefined
}

/** Where a place on the scan comes to lie on the delivered picture, which may be past its edges. */
export const pointOnDelivered = (
  framing: Framing,
  aspect: number,
  { x, y }: PicturePoint,
): PicturePoint => {
  const { xx, xy, yx, yy, offsetX, offsetY } = unitMap(framing, aspect)
  const [column, row] = [x * aspect - 0.5 - offsetX, y - 0.5 - offsetY]
  const determinant = xx * yy - xy * yx
  return {
    x: ((yy * column - xy * row) / determinant + 0.5) / aspect,
    y: (xx * row - yx * column) / determinant + 0.5,
  }
}
