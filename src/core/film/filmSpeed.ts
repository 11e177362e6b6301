import type { Rate } from '../time/rate.ts'

/** What running at another speed does. */
export type SpeedChange = {
  /** How much faster: above 1 it runs faster than it was made for. */
  readonly ratio: number
  /** Pitch of the sound, in cents (hundredths of an equal-tempered semitone): 1200·log₂ of the ratio. */
  readonly cents: number
  /** Length at the new speed over the length at the old. */
  readonly length: number
}

/** Film made for one speed, run at another. Arithmetic; see facts/film.md §4 for check values. */
export const speedChange = (madeFor: Rate, runAt: Rate): SpeedChange => {
  const ratio = (runAt.num * madeFor.den) / (runAt.den * madeFor.num)
  return { ratio, cents: 1200 * Math.log2(ratio), length: 1 / ratio }
}
