/** A picture of 4:2:0 planes of 8 bits, a byte each, plane after plane. */
export type Planes420 = {
  readonly width: number
  readonly height: number
  readonly bytes: Uint8Array<ArrayBuffer>
}

/** The size a picture has when every so many pixels become one; whole pairs, at least one pair. */
export const shrunkSize = (
  width: number,
  height: number,
  times: number,
): { readonly width: number; readonly height: number } => ({
  width: Math.max(2, 2 * Math.floor(width / (2 * times))),
  height: Math.max(2, 2 * Math.floor(height / (2 * times))),
})

/** Means over boxes of a plane, one a pixel of the small plane; sides past its edge are left out. */
const shrinkPlane = (
  from: Uint8Array,
  columns: number,
  rows: number,
  to: Uint8Array,
  width: number,
  times: number,
): void => {
  for (let i = 0; i < to.length; i++) {
    const left = (i % width) * times
    const top = Math.floor(i / width) * times
    const right = Math.min(columns, left + times)
    const bottom = Math.min(rows, top + times)
    let sum = 0
    for (let y = top; y < bottom; y++)
      for (let x = left; x < right; x++) sum += from[y * columns + x] ?? 0
    to[i] = Math.round(sum / Math.max(1, (right - left) * (bottom - top)))
  }
}

/** A picture made `times` smaller each way, every pixel the mean of those it covers. */
export const shrinkPlanes = ({ width, height, bytes }: Planes420, times: number): Planes420 => {
  const small = shrunkSize(width, height, times)
  const luma = small.width * small.height
  const out = new Uint8Array((luma * 3) / 2)
  const [columns, rows] = [(width + 1) >> 1, (height + 1) >> 1]
  const whole = width * height
  const chroma = columns * rows
  shrinkPlane(bytes.subarray(0, whole), width, height, out.subarray(0, luma), small.width, times)
  for (const plane of [0, 1])
    shrinkPlane(
      bytes.subarray(whole + plane * chroma, whole + (plane + 1) * chroma),
      columns,
      rows,
      out.subarray(luma + (plane * luma) / 4, luma + ((plane + 1) * luma) / 4),
      small.width / 2,
      times,
    )
  return { ...small, bytes: out }
}
