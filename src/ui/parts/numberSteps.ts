import { formatNumber } from './numberText.ts'

/** How a number moves: its step, the decimals it is shown with, and its limits. */
export type NumberSteps = {
  readonly step: number
  readonly decimals: number
  readonly low: number
  readonly high: number
}

/** Decimals a step of `size` can be seen with, at most. */
const decimalsOf = (size: number): number => Math.max(0, Math.ceil(-Math.log10(size) - 1e-9))

/**
 * Decimals shown while a number moves by `times` its step: as many as that takes. A number of whole
 * things stays whole.
 */
export const decimalsFor = ({ step, decimals }: NumberSteps, times: number): number =>
  decimals === 0 ? 0 : Math.max(decimals, decimalsOf(step * times))

/** How far one nudge goes: the step, but for whole things never less than one. */
export const nudgeBy = ({ step, decimals }: NumberSteps, times: number): number =>
  decimals === 0 ? Math.max(1, step * times) : step * times

export type Stopped = {
  readonly value: number
  /** Which limit the number was stopped at. */
  readonly at: 'low' | 'high' | undefined
}

/** A number kept within its limits, and to so many decimals. */
export const stopAtLimits = (
  wanted: number,
  { low, high }: NumberSteps,
  decimals: number,
): Stopped => {
  const value = Number(wanted.toFixed(decimals))
  if (value > high) return { value: high, at: 'high' }
  if (value < low) return { value: low, at: 'low' }
  return { value, at: undefined }
}

/** What is said in place where a number stops: “most is 4”. */
export const limitWords = (at: 'low' | 'high', steps: NumberSteps, unit = ''): string => {
  const limit = at === 'high' ? steps.high : steps.low
  const needed = Number.isInteger(limit) ? 0 : Math.max(steps.decimals, 1)
  return `${at === 'high' ? 'most' : 'least'} is ${formatNumber(limit, needed)}${unit}`
}
