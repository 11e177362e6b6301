import type { FramingMap } from './framing.ts'

/**
 * Calls `see` for every delivered pixel (its index, row by row) that shows something of the scan,
 * with its place there in pixels; it does not for those that are blanked, or whose place leaves the
 * scan. Both rasters are `width`×`height`.
 */
export const seenPlaces = (
  { xx, xy, yx, yy, offsetX, offsetY, open }: FramingMap,
  width: number,
  height: number,
  see: (pixel: number, column: number, row: number) => void,
): void => {
  for (let y = open.top; y < open.bottom; y++)
    for (let x = open.left; x < open.right; x++) {
      const sx = xx * x + xy * y + offsetX
      const sy = yx * x + yy * y + offsetY
      if (sx < -0.5 || sx > width - 0.5 || sy < -0.5 || sy > height - 0.5) continue
      see(y * width + x, sx, sy)
    }
}
