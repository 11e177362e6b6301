import { type Biquad, biquadOf, type RunningFilter, runBiquad } from './biquad.ts'

/**
 * The K-weighting of ITU-R BS.1770-4 (10/2015), Annex 1: a shelf for the head and a high-pass. The
 * recommendation prints coefficients for 48 kHz alone; these come from the analogue filters behind
 * them (corner and q solved from the printed numbers, as in “ITU-R BS.1770-1 filter
 * specifications (unofficial)”, 2011), so that other rates are weighted alike.
 */
export const kWeightingAt = (rate: number): readonly [shelf: Biquad, highPass: Biquad] => {
  const shelf = biquadOf(
    { high: 1.584864701130855, band: 1.258720930232562, low: 1 },
    0.7071752369554196,
    1681.974450955533,
    rate,
  )
  const { a1, a2 } = biquadOf(
    { high: 1, band: 0, low: 0 },
    0.5003270373238773,
    38.13547087602444,
    rate,
  )
  // The recommendation leaves the high-pass without the factor that would bring its top to 1.
  return [shelf, { b0: 1, b1: -2, b2: 1, a1, a2 }]
}

/** K-weighting of one channel, from sample to sample. */
export const runKWeighting = (rate: number): RunningFilter => {
  const [shelf, highPass] = kWeightingAt(rate).map(runBiquad)
  return (samples) => {
    shelf?.(samples)
    highPass?.(samples)
  }
}
