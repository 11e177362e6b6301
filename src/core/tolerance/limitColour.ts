import { LUMA_WEIGHTS } from '../colour/lumaWeights.ts'
import type { Triple } from '../colour/triple.ts'
import { bendLevel, type LevelRange } from './bendLevel.ts'
import { compositePeaks } from './compositePeaks.ts'
import type { Limiter } from './limiter.ts'

const lumaOf = ([r, g, b]: Triple, { matrix }: Limiter): number => {
  const [kr, kg, kb] = LUMA_WEIGHTS[matrix]
  return kr * r + kg * g + kb * b
}

/** `part` of the way from a grey to a colour. */
const fromGrey = ([r, g, b]: Triple, grey: number, part: number): Triple => [
  grey + part * (r - grey),
  grey + part * (g - grey),
  grey + part * (b - grey),
]

/** Y′ brought inside as gain would from above, with black kept, and as lift would from below. */
const limitLuma = (rgb: Triple, limiter: Limiter, range: LevelRange): Triple => {
  const luma = lumaOf(rgb, limiter)
  const bent = bendLevel(luma, range)
  if (bent === luma) return rgb
  const grey = limiter.neutral[luma > bent ? 0 : 1]
  return fromGrey(rgb, grey, (bent - grey) / (luma - grey))
}

/** The part of the way from `grey` to a peak above it that is kept, where the most is `limit`. */
const keptOfPeak = (peak: number, grey: number, limit: number, knee: number): number => {
  const most = Math.max(limit, grey)
  const range = { low: -Infinity, high: most, knee: Math.min(knee, most - grey) }
  const bent = bendLevel(peak, range)
  return bent === peak ? 1 : (bent - grey) / (peak - grey)
}

/** Colour taken out until the peaks of the composite signal are inside; Y′ stays if it is inside. */
const limitPeaks = (rgb: Triple, limiter: Limiter, { low, high, knee }: LevelRange): Triple => {
  const [darkest, lightest] = limiter.neutral
  const grey = Math.min(Math.max(lumaOf(rgb, limiter), darkest), lightest)
  const [least, most] = compositePeaks(...rgb)
  const part = Math.min(keptOfPeak(most, grey, high, knee), keptOfPeak(-least, -grey, -low, knee))
  return part === 1 ? rgb : fromGrey(rgb, grey, part)
}

/**
 * A colour brought inside every limit of a profile, in three steps, each of which keeps what the
 * one before has done: R′, G′, B′ each by itself (`bendLevel`); then all three towards grey along
 * a straight line as far as Y′ asks for, and as far as the composite peaks ask for. Filtered
 * figures are means of colours inside, so they are inside as well.
 *
 * Hard: what is inside already is untouched. Soft: what lies before every knee is untouched.
 * @param rgb R′G′B′, 0 black, 1 peak, unbounded but finite
 */
export const limitColour = (rgb: Triple, limiter: Limiter): Triple => {
  const { rgb: levels, luma, composite } = limiter
  let out = rgb
  if (levels)
    out = [bendLevel(out[0], levels), bendLevel(out[1], levels), bendLevel(out[2], levels)]
  if (luma) out = limitLuma(out, limiter, luma)
  return composite ? limitPeaks(out, limiter, composite) : out
}
