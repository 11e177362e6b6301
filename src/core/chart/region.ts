import { problem } from '../base/problem.ts'
import { fail, ok, type Result } from '../base/result.ts'
import type { RgbPicture } from '../picture/rgbPicture.ts'

/** A rectangle of a picture, in pixels. */
export type Region = {
  readonly x: number
  readonly y: number
  readonly width: number
  readonly height: number
}

/** One channel of a region, row by row. */
export type RegionValues = {
  readonly width: number
  readonly height: number
  readonly values: Float64Array
}

export type Channel = 'r' | 'g' | 'b'

/** Refuses a region that is not all on the picture, or smaller than `least` on a side. */
export const checkRegion = (
  { width, height }: Pick<RgbPicture, 'width' | 'height'>,
  region: Region,
  least = 1,
): Result<Region> => {
  const { x, y, width: wide, height: high } = region
  const isWhole = [x, y, wide, high].every(Number.isInteger)
  if (!isWhole || x < 0 || y < 0 || x + wide > width || y + high > height)
    return fail(
      problem(
        'out-of-range',
        `The region ${x},${y},${wide},${high} is not on the picture of ${width} × ${height}; give one that is.`,
      ),
    )
  return wide < least || high < least
    ? fail(problem('out-of-range', `The region is too small: ${least} pixels a side at least.`))
    : ok(region)
}

/** One channel of a region; the region lies on the picture. */
export const regionValues = (
  picture: RgbPicture,
  { x, y, width, height }: Region,
  channel: Channel,
): RegionValues => {
  const from = picture[channel]
  const values = new Float64Array(width * height)
  for (let row = 0; row < height; row++)
    for (let column = 0; column < width; column++)
      values[row * width + column] = from[(y + row) * picture.width + x + column] ?? 0
  return { width, height, values }
}

/** Rows become columns. */
export const turned = ({ width, height, values }: RegionValues): RegionValues => {
  const made = new Float64Array(values.length)
  for (let row = 0; row < height; row++)
    for (let column = 0; column < width; column++)
      made[column * height + row] = values[row * width + column] ?? 0
  return { width: height, height: width, values: made }
}

/** The mean of every column, or with `turned` of every row. */
export const columnMeans = ({ width, height, values }: RegionValues): Float64Array => {
  const means = new Float64Array(width)
  for (let i = 0; i < values.length; i++)
    means[i % width] = (means[i % width] ?? 0) + (values[i] ?? 0) / height
  return means
}
