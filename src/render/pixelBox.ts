import type { Planes } from '../core/picture/planes.ts'
import type { TileArea } from '../core/picture/tileLayout.ts'

/** Pixels of what is drawn to, `y` from its upper edge. */
export type PixelBox = {
  readonly x: number
  readonly y: number
  readonly width: number
  readonly height: number
}

/** The whole pixels of an area, at least one each way; areas that touch share an edge. */
export const boxOfArea = (area: TileArea, width: number, height: number): PixelBox => {
  const x = Math.round(area.left * width)
  const y = Math.round(area.top * height)
  return {
    x,
    y,
    width: Math.max(1, Math.round((area.left + area.width) * width) - x),
    height: Math.max(1, Math.round((area.top + area.height) * height) - y),
  }
}

/** The pixels left of a wipe at `at` (0…1) are those whose middle is left of it. */
export const wipeColumn = (at: number, width: number): number =>
  Math.min(width, Math.max(0, Math.ceil(at * width - 0.5)))

/** Width over height as a picture is shown. */
export const shownAspect = (
  { width, height }: Pick<Planes, 'width' | 'height'>,
  pixelAspect = 1,
): number => (width / height) * pixelAspect

/** Shapes this much alike are drawn alike: rounding of a few pixels, not another format. */
const SAME_SHAPE = 0.01

/**
 * The middle of `box`, whose shape is that of a picture of aspect `main`, in which a picture of
 * aspect `other` keeps its shape; the whole box where the two are alike.
 */
export const fitInside = (box: PixelBox, main: number, other: number): PixelBox => {
  const ratio = other / main
  if (Math.abs(ratio - 1) < SAME_SHAPE) return box
  const width = ratio < 1 ? Math.max(1, Math.round(box.width * ratio)) : box.width
  const height = ratio > 1 ? Math.max(1, Math.round(box.height / ratio)) : box.height
  return {
    x: box.x + Math.floor((box.width - width) / 2),
    y: box.y + Math.floor((box.height - height) / 2),
    width,
    height,
  }
}
