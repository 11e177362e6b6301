import type { RgbPicture } from '../picture/rgbPicture.ts'
import { type Channel, type Region, regionValues } from './region.ts'

/** Peak white above black in mV: 0.7 V, common practice, no published source. */
const PEAK_MV = 700

/** Levels of an even patch, as of an open gate. */
export type PatchLevels = {
  /** Means of R, G, B in mV of 700. */
  readonly mean: readonly [r: number, g: number, b: number]
  /** Standard deviations in mV: noise and shading together. */
  readonly deviation: readonly [r: number, g: number, b: number]
  /** Red and blue less green, in mV. */
  readonly redLessGreen: number
  readonly blueLessGreen: number
  /** Greatest less least mean of green over a 3 × 3 of parts, in mV: shading. */
  readonly shading: number
}

const statistics = (picture: RgbPicture, region: Region, channel: Channel) => {
  const { values } = regionValues(picture, region, channel)
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length
  const squares = values.reduce((sum, value) => sum + (value - mean) ** 2, 0)
  return { mean: PEAK_MV * mean, deviation: PEAK_MV * Math.sqrt(squares / values.length) }
}

const PARTS = 3

/** The levels of an even patch; `region` lies on the picture and is 3 pixels a side at least. */
export const patchLevels = (picture: RgbPicture, region: Region): PatchLevels => {
  const [r, g, b] = (['r', 'g', 'b'] as const).map((each) => statistics(picture, region, each))
  if (!r || !g || !b) throw new Error('Bug: a picture has three channels')
  const width = Math.floor(region.width / PARTS)
  const height = Math.floor(region.height / PARTS)
  const parts = Array.from({ length: PARTS * PARTS }, (_, i) => {
    const [column, row] = [i % PARTS, Math.floor(i / PARTS)]
    const part = { x: region.x + column * width, y: region.y + row * height, width, height }
    return statistics(picture, part, 'g').mean
  })
  return {
    mean: [r.mean, g.mean, b.mean],
    deviation: [r.deviation, g.deviation, b.deviation],
    redLessGreen: r.mean - g.mean,
    blueLessGreen: b.mean - g.mean,
    shading: Math.max(...parts) - Math.min(...parts),
  }
}
