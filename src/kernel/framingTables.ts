import type { FramingMap } from '../core/picture/framing.ts'

/** A place outside the scanned picture, or blanked. */
export const OUTSIDE = -2

/**
 * Where delivered columns or rows are read on the scanned picture: between the sample `before`
 * (−1…count−1; ends repeated) and the next one, a `part` of the way; or OUTSIDE.
 */
export type Places = { readonly before: Int32Array; readonly part: Float32Array }

const places = (
  count: number,
  scale: number,
  offset: number,
  first: number,
  end: number,
): Places => {
  const before = new Int32Array(count).fill(OUTSIDE)
  const part = new Float32Array(count)
  for (let i = first; i < end; i++) {
    const place = i * scale + offset
    if (!(place >= -0.5 && place <= count - 0.5)) continue
    const whole = Math.floor(place)
    before[i] = whole
    part[i] = place - whole
  }
  return { before, part }
}

/** The places of an upright picture's columns and rows: those of `framePicture`. */
export const framingTables = (
  { xx, yy, offsetX, offsetY, open }: FramingMap,
  width: number,
  height: number,
) => ({
  columns: places(width, xx, offsetX, open.left, open.right),
  rows: places(height, yy, offsetY, open.top, open.bottom),
})
