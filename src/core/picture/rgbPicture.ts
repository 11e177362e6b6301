/**
 * A picture as normalised non-linear R′G′B′ in float64: 0 black, 1 nominal peak, values outside
 * kept. Three planes of width·height samples, row by row.
 */
export type RgbPicture = {
  readonly width: number
  readonly height: number
  readonly r: Float64Array
  readonly g: Float64Array
  readonly b: Float64Array
}

export const rgbPicture = (width: number, height: number): RgbPicture => ({
  width,
  height,
  r: new Float64Array(width * height),
  g: new Float64Array(width * height),
  b: new Float64Array(width * height),
})
