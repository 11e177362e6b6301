import { problem } from '../base/problem.ts'
import { fail, ok, type Result } from '../base/result.ts'
import { columnMeans, type RegionValues, turned } from './region.ts'

/** Fine lines of a chart: how closely they lie, and how much of them is left. */
export type FineLines = {
  /** Cycles a pixel. */
  readonly frequency: number
  /** Peak to peak of the first harmonic, as signal. */
  readonly amplitude: number
  /** The same as a part of what lines from black to peak white have: 4/π. */
  readonly part: number
  readonly areLevel: boolean
}

/** Lines as signal, peak to peak, at least. */
const LEAST_AMPLITUDE = 0.002

const STEPS = 2000

const fade = (i: number, count: number): number =>
  0.5 - 0.5 * Math.cos((2 * Math.PI * (i + 0.5)) / count)

/** Half the peak to peak of what of a line of values goes at a frequency, faded at its ends. */
const halfAt = (values: Float64Array, frequency: number): number => {
  let real = 0
  let imaginary = 0
  for (const [i, value] of values.entries()) {
    const weighed = value * fade(i, values.length)
    real += weighed * Math.cos(2 * Math.PI * frequency * i)
    imaginary += weighed * Math.sin(2 * Math.PI * frequency * i)
  }
  return (4 * Math.hypot(real, imaginary)) / values.length
}

const strongest = (values: Float64Array) => {
  const count = values.length
  let weights = 0
  let sum = 0
  for (const [i, value] of values.entries()) {
    weights += fade(i, count)
    sum += fade(i, count) * value
  }
  const level = values.map((value) => value - sum / weights)
  // Slower than three cycles in the region is shading.
  const slowest = 3 / count
  let best = { frequency: slowest, half: 0 }
  for (let step = 0; step <= STEPS; step++) {
    const frequency = slowest + ((0.5 - slowest) * step) / STEPS
    const half = halfAt(level, frequency)
    if (half > best.half) best = { frequency, half }
  }
  return best
}

/**
 * The strongest frequency of upright or level lines in a region, and its amplitude: what is left of
 * it tells focus and high-frequency response. The region holds lines of one closeness alone.
 */
export const fineLines = (region: RegionValues): Result<FineLines> => {
  const upright = strongest(columnMeans(region))
  const level = strongest(columnMeans(turned(region)))
  const areLevel = level.half > upright.half
  const { frequency, half } = areLevel ? level : upright
  const amplitude = 2 * half
  if (amplitude < LEAST_AMPLITUDE)
    return fail(problem('not-found', 'There are no fine lines in the region; mark them out.'))
  return ok({ frequency, amplitude, part: amplitude / (4 / Math.PI), areLevel })
}
