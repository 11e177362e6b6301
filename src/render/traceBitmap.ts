/**
 * Counts as a picture of grey points: black and clear where nothing was counted. Counts are few
 * where detail is fine, and a logarithm keeps them in sight; `most` and more are full white.
 */
export const traceBitmap = (
  width: number,
  height: number,
  countAt: (x: number, y: number) => number,
  most: number,
): OffscreenCanvas => {
  const bitmap = new OffscreenCanvas(width, height)
  const image = new ImageData(width, height)
  const whole = Math.log1p(Math.max(1, most))
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const count = countAt(x, y)
      if (count === 0) continue
      const value = FAINTEST + (255 - FAINTEST) * Math.min(1, Math.log1p(count) / whole)
      const to = (y * width + x) * 4
      image.data[to] = value
      image.data[to + 1] = value
      image.data[to + 2] = value
      image.data[to + 3] = 255
    }
  bitmap.getContext('2d')?.putImageData(image, 0, 0)
  return bitmap
}

/** The grey of a single count. */
const FAINTEST = 45

/** The largest of some counts. */
export const mostOf = (counts: Uint32Array): number => {
  let most = 0
  for (const count of counts) if (count > most) most = count
  return most
}
