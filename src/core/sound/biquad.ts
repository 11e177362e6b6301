/** A second-order section, a0 = 1. */
export type Biquad = {
  readonly b0: number
  readonly b1: number
  readonly b2: number
  readonly a1: number
  readonly a2: number
}

/** A filter that goes on where it left off: samples are changed in place. */
export type RunningFilter = (samples: Float64Array) => void

/** One section, transposed direct form II. */
export const runBiquad = ({ b0, b1, b2, a1, a2 }: Biquad): RunningFilter => {
  let s1 = 0
  let s2 = 0
  return (samples) => {
    for (let i = 0; i < samples.length; i++) {
      const x = samples[i] ?? 0
      const y = b0 * x + s1
      s1 = b1 * x - a1 * y + s2
      s2 = b2 * x - a2 * y
      samples[i] = y
    }
  }
}

/**
 * A section by the bilinear transform, prewarped at `hz`: gains of its high, band and low parts
 * (v), and q.
 */
export const biquadOf = (
  v: { readonly high: number; readonly band: number; readonly low: number },
  q: number,
  hz: number,
  rate: number,
): Biquad => {
  const w = Math.tan((Math.PI * hz) / rate)
  const a0 = w * w + w / q + 1
  return {
    b0: (v.low * w * w + (v.band * w) / q + v.high) / a0,
    b1: (2 * (v.low * w * w - v.high)) / a0,
    b2: (v.low * w * w - (v.band * w) / q + v.high) / a0,
    a1: (2 * (w * w - 1)) / a0,
    a2: (w * w - w / q + 1) / a0,
  }
}
