import { problem } from '../base/problem.ts'
import { fail, ok, type Result } from '../base/result.ts'
import { boundedLeastSquares } from '../linear/boundedLeastSquares.ts'
import { type DecayFit, fitDecay } from './fitDecay.ts'

/** A line across an edge from white to black: places rising evenly, and a level at each. */
export type LineProfile = {
  readonly x: readonly number[]
  readonly y: readonly number[]
}

/** A streak behind an edge, as parts of the step from white to black. */
export type Streak = {
  /** The farthest from black, with its sign. */
  readonly most: number
  /** Root of the mean of the squares. */
  readonly rms: number
}

/** What an afterglow is made of, and what corrects it. */
export type AfterglowFacts = {
  /** Where white ends, in the unit of x. */
  readonly edge: number
  /** From the least time constant to the greatest: how far it falls, and by how much of the step. */
  readonly terms: readonly { readonly constant: number; readonly part: number }[]
  /** By how much of the step each corrector is to act, 0 to its limit, in the order given. */
  readonly settings: readonly number[]
  readonly before: Streak
  /** Reckoned, with the correctors set so. */
  readonly after: Streak
}

export type AfterglowWish = {
  /** Time constants of the machine's correctors in the unit of x; those of the fit where none. */
  readonly correctors?: readonly number[]
  /** The most that any corrector can act, as a part of the step. */
  readonly most?: number
  /** Exponentials to fit, 1 to 3; as many as are worth it where it is left open. */
  readonly terms?: number
}

/** A step from white to black, in the unit of y over its own range, is at least this clear of noise. */
const LEAST_SAMPLES = 16
const MOST_TERMS = 3
const MOST_ACTS = 0.5

const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length

/** The sample after which the level falls most. */
const fallAt = (y: readonly number[]): number => {
  let at = 1
  for (let i = 2; i < y.length; i++)
    if ((y[i] ?? 0) - (y[i - 1] ?? 0) < (y[at] ?? 0) - (y[at - 1] ?? 0)) at = i
  return at
}

/** What a fit leaves below this part of the step is no afterglow: a step of 16 bits. */
const FINEST = 1 / 65_536

/** A fit with one more exponential is taken where it leaves so much less, for each number it adds. */
const isWorthIt = (fewer: DecayFit, more: DecayFit, samples: number): boolean => {
  if (fewer.squares < samples * FINEST ** 2) return false
  const bayes = (fit: DecayFit) =>
    samples * Math.log(Math.max(fit.squares, 1e-300) / samples) +
    2 * fit.terms.length * Math.log(samples)
  return bayes(more) < bayes(fewer) - 6
}

const bestFit = (
  x: readonly number[],
  y: readonly number[],
  terms: number | undefined,
): Result<DecayFit> => {
  if (terms !== undefined) return fitDecay(x, y, { terms, hasLevel: true })
  let best = fitDecay(x, y, { terms: 1, hasLevel: true })
  for (let count = 2; count <= MOST_TERMS && best.ok; count++) {
    const more = fitDecay(x, y, { terms: count, hasLevel: true })
    const isSound = more.ok && more.value.terms.every(({ amplitude }) => amplitude > 0)
    if (!more.ok || !isSound || !isWorthIt(best.value, more.value, x.length)) break
    best = more
  }
  return best
}

/**
 * What a corrector of one time constant adds where it acts fully: the signal through a first-order
 * high-pass, sample by sample, at rest in the white before the edge.
 */
const correction = ({ x, y }: LineProfile, constant: number): readonly number[] => {
  let slow = y[0] ?? 0
  return y.map((value, i) => {
    const step = i === 0 ? 0 : (x[i] ?? 0) - (x[i - 1] ?? 0)
    const kept = Math.exp(-step / constant)
    const before = y[i - 1] ?? value
    // A straight line between samples, exactly.
    const ramp = step === 0 ? 0 : (constant / step) * (1 - kept)
    slow = kept * slow + (1 - ramp) * value + (ramp - kept) * before
    return value - slow
  })
}

const streakOf = (y: readonly number[]): Streak => ({
  most: y.reduce((far, value) => (Math.abs(value) > Math.abs(far) ? value : far), 0),
  rms: Math.sqrt(mean(y.map((value) => value ** 2))),
})

/** Whether places rise evenly, each value a number. */
const isEven = ({ x, y }: LineProfile): boolean => {
  const step = ((x.at(-1) ?? 0) - (x[0] ?? 0)) / (x.length - 1)
  return (
    x.length === y.length &&
    step > 0 &&
    y.every(Number.isFinite) &&
    x.every((at, i) => Math.abs(at - (x[0] ?? 0) - i * step) < 0.01 * step)
  )
}

/** The profile with white at 1 and the black it comes to at 0; refused where it has no edge. */
const stepOf = (profile: LineProfile): Result<{ y: readonly number[]; at: number }> => {
  const { y } = profile
  const at = fallAt(y)
  const white = mean(y.slice(0, Math.max(1, at - 2)))
  const black = mean(y.slice(-Math.max(2, Math.floor((y.length - at) / 10))))
  if (!(white > black) || at < 3)
    return fail(
      problem(
        'not-found',
        'A profile goes from white to black, with some samples of white before; turn it round or take more.',
      ),
    )
  return ok({ y: y.map((value) => (value - black) / (white - black)), at })
}

/**
 * Fits the afterglow behind an edge from white to black as a sum of exponentials, and finds by how
 * much each corrector is to act for the least streak, within 0 and its limit. A corrector adds a
 * first-order high-pass of the signal; which turn of its knob that is, the machine knows.
 */
export const afterglow = (
  profile: LineProfile,
  { correctors, most = MOST_ACTS, terms }: AfterglowWish = {},
): Result<AfterglowFacts> => {
  if (!isEven(profile))
    return fail(
      problem('malformed', 'A profile has a level at each of evenly rising places; mend it.'),
    )
  const step = stepOf(profile)
  if (!step.ok) return step
  const { y, at } = step.value
  const { x } = profile
  const edge = ((x[at] ?? 0) + (x[at - 1] ?? 0)) / 2
  if (y.length - at < LEAST_SAMPLES)
    return fail(
      problem('missing', `Behind the edge are fewer than ${LEAST_SAMPLES} samples; take more.`),
    )
  const behind = x.slice(at).map((place) => place - edge)
  const fit = bestFit(behind, y.slice(at), terms)
  if (!fit.ok) return fit
  // The black that it dies away to, which the last samples may not have come to.
  const { level } = fit.value
  const clean = y.map((value) => (value - level) / (1 - level))
  const found = fit.value.terms.map(({ amplitude, rate }) => ({
    constant: 1 / rate,
    part: amplitude / (1 - level),
  }))
  const constants = correctors ?? found.map(({ constant }) => constant)
  if (!constants.every((constant) => constant > 0) || constants.length === 0)
    return fail(problem('out-of-range', 'A time constant of a corrector is more than 0.'))
  const added = constants.map((constant) => correction({ x, y: clean }, constant).slice(at))
  const streak = clean.slice(at)
  const { solution } = boundedLeastSquares(
    streak.map((_, i) => added.map((each) => each[i] ?? 0)),
    streak.map((value) => -value),
    constants.map(() => ({ low: 0, high: most })),
  )
  const after = streak.map((value, i) =>
    added.reduce((sum, each, k) => sum + (solution[k] ?? 0) * (each[i] ?? 0), value),
  )
  return ok({
    ...{ edge, terms: found, settings: solution },
    ...{ before: streakOf(streak), after: streakOf(after) },
  })
}
