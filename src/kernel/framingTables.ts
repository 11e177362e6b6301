import { type Framing, framingMap } from '../core/picture/framing.ts'

/** A place outside the scanned picture. */
export const OUTSIDE = -2

/**
 * Where delivered columns or rows are read on the scanned picture: between the sample `before`
 * (−1…count−1; ends repeated) and the next one, a `part` of the way; or OUTSIDE.
 */
export type Places = { readonly before: Int32Array; readonly part: Float32Array }

const places = (count: number, scale: number, offset: number): Places => {
  const before = new Int32Array(count).fill(OUTSIDE)
  const part = new Float32Array(count)
  for (let i = 0; i < count; i++) {
    const place = i * scale + offset
    if (!(place >= -0.5 && place <= count - 0.5)) continue
    const whole = Math.floor(place)
    before[i] = whole
    part[i] = place - whole
  }
  return { before, part }
}

/** The places of a framed picture's columns and rows: those of `framePicture`. */
export const framingTables = (framing: Framing, width: number, height: number) => {
  const { scale, offsetX, offsetY } = framingMap(framing, width, height)
  return { columns: places(width, scale, offsetX), rows: places(height, scale, offsetY) }
}
