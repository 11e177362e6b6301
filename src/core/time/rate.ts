/** Frames per second as an exact fraction in lowest terms, both positive integers. */
export type Rate = { readonly num: number; readonly den: number }

const gcd = (a: number, b: number): number => (b === 0 ? a : gcd(b, a % b))

/** `num/den` in lowest terms. Both must be positive safe integers. */
export const rate = (num: number, den = 1): Rate => {
  const g = gcd(num, den)
  return { num: num / g, den: den / g }
}

/** Frames per second as a float, for display and clocks only. */
export const framesPerSecond = (r: Rate): number => r.num / r.den

/**
 * Nominal whole frames per second used for counting timecode: 30 for 30000/1001 (ST 12-1); at
 * least 1, so that slower reels are counted too.
 */
export const nominalFramesPerSecond = (r: Rate): number => Math.max(1, Math.round(r.num / r.den))

const NTSC_DEN = 1001

/**
 * The exact rate nearest to a measured one: n/1 or n·1000/1001 within 0.02 %, else thousandths
 * of a frame per second.
 */
export const snapRate = (fps: number): Rate => {
  const whole = Math.round(fps)
  const isNear = (value: number) => Math.abs(value / fps - 1) < 2e-4
  if (whole > 0 && isNear(whole)) return rate(whole)
  const ntsc = Math.round((fps * NTSC_DEN) / 1000)
  if (ntsc > 0 && isNear((ntsc * 1000) / NTSC_DEN)) return rate(ntsc * 1000, NTSC_DEN)
  return rate(Math.max(1, Math.round(fps * 1000)), 1000)
}

/** Seconds from the first frame to the start of frame `n`. */
export const secondsAt = (n: number, r: Rate): number => (n * r.den) / r.num

export const sameRate = (a: Rate, b: Rate): boolean => a.num * b.den === b.num * a.den
