import { problem } from '../base/problem.ts'
import { fail, ok, type Result } from '../base/result.ts'
import { linearLeastSquares } from '../linear/linearLeastSquares.ts'

/** One part of a decay: amplitude · e^(−rate · x). */
export type DecayTerm = { readonly amplitude: number; readonly rate: number }

/** A decay as a sum of exponentials, the slowest last. */
export type DecayFit = {
  readonly terms: readonly DecayTerm[]
  /** What is left when every term has died away; 0 where none was asked for. */
  readonly level: number
  /** Sum of squares of what the fit leaves. */
  readonly squares: number
}

export type DecayWish = {
  /** How many exponentials, 1 to 4. */
  readonly terms: number
  /** Whether it ends on a level that is not 0. */
  readonly hasLevel: boolean
}

const MOST_TERMS = 4
const MOST_ROUNDS = 400

/** Where a step makes the sum of squares no smaller by more than this part of it, it is the last. */
const ENOUGH = 1e-14

type Samples = { readonly x: readonly number[]; readonly y: readonly number[] }

/** The amplitudes that go with given rates, and what they leave, one a sample. */
const withRates = ({ x, y }: Samples, logRates: readonly number[], hasLevel: boolean) => {
  const rows = x.map((at) => [
    ...logRates.map((log) => Math.exp(-Math.exp(log) * at)),
    ...(hasLevel ? [1] : []),
  ])
  const { solution, residual } = linearLeastSquares(rows, y)
  return { solution, residual, squares: residual.reduce((sum, each) => sum + each * each, 0) }
}

/** Change of a rate's logarithm for its slope: the least error of central differences. */
const STEP = 6e-6

/**
 * From some rates to the nearest least of the sum of squares, the amplitudes always at their best
 * (G. H. Golub and V. Pereyra, “variable projection”, SIAM J. Numer. Anal. 10, 1973), by steps of
 * D. W. Marquardt (J. SIAM 11, 1963); both from memory.
 */
const descend = (samples: Samples, begin: readonly number[], hasLevel: boolean) => {
  let rates = begin.slice()
  let best = withRates(samples, rates, hasLevel)
  let damping = 1e-3
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const slopes = rates.map((_, j) => {
      const at = (by: number) =>
        withRates(
          samples,
          rates.map((rate, k) => (k === j ? rate + by : rate)),
          hasLevel,
        ).residual
      const [more, less] = [at(STEP), at(-STEP)]
      return more.map((value, i) => (value - (less[i] ?? 0)) / (2 * STEP))
    })
    const lengths = slopes.map((slope) => Math.hypot(...slope) || 1)
    let isBetter = false
    for (let tries = 0; tries < 12 && !isBetter; tries++) {
      const rows = [
        ...best.residual.map((_, i) => slopes.map((slope) => slope[i] ?? 0)),
        ...rates.map((_, j) =>
          rates.map((__, k) => (j === k ? Math.sqrt(damping) * (lengths[j] ?? 1) : 0)),
        ),
      ]
      const { solution: step } = linearLeastSquares(rows, [
        ...best.residual.map((each) => -each),
        ...rates.map(() => 0),
      ])
      const next = rates.map((rate, j) => rate + Math.min(2, Math.max(-2, step[j] ?? 0)))
      const found = withRates(samples, next, hasLevel)
      if (found.squares < best.squares) {
        const gain = 1 - found.squares / best.squares
        rates = next
        best = found
        damping = Math.max(1e-15, damping / 10)
        isBetter = gain > ENOUGH
        if (!isBetter) return { rates, ...best }
      } else damping *= 10
    }
    if (!isBetter) break
  }
  return { rates, ...best }
}

/** Samples that are enough to find out where to begin. */
const ENOUGH_SAMPLES = 100

/** Some of many samples, evenly; all where they are few. */
const thinned = (samples: Samples): Samples => {
  const each = Math.floor(samples.x.length / ENOUGH_SAMPLES)
  if (each < 2) return samples
  const keep = (values: readonly number[]) => values.filter((_, i) => i % each === 0)
  return { x: keep(samples.x), y: keep(samples.y) }
}

/** Rates to begin from: spread evenly, by their logarithms, over what the samples can tell. */
const beginnings = ({ x }: Samples, terms: number): readonly (readonly number[])[] => {
  const span = (x.at(-1) ?? 1) - (x[0] ?? 0)
  const [slow, fast] = [Math.log(0.5 / span), Math.log((0.7 * x.length) / span)]
  return [0.1, 0.25, 0.4].flatMap((edge) =>
    [0.5, 0.75, 1].map((reach) =>
      Array.from({ length: terms }, (_, k) => {
        const part = terms === 1 ? 0.5 : edge + ((reach - edge) * k) / (terms - 1)
        return slow + part * (fast - slow)
      }),
    ),
  )
}

/**
 * Samples of a decay → the sum of exponentials that fits them best by least squares. `x` rises from
 * sample to sample; there are more samples than numbers to find. Refuses what cannot be fitted.
 */
export const fitDecay = (
  x: readonly number[],
  y: readonly number[],
  { terms, hasLevel }: DecayWish,
): Result<DecayFit> => {
  const unknowns = 2 * terms + (hasLevel ? 1 : 0)
  const isRising = x.every((at, i) => i === 0 || at > (x[i - 1] ?? 0))
  if (!(terms >= 1 && terms <= MOST_TERMS))
    return fail(problem('out-of-range', `A decay is fitted by 1 to ${MOST_TERMS} exponentials.`))
  if (x.length !== y.length || ![...x, ...y].every(Number.isFinite) || !isRising)
    return fail(
      problem('malformed', 'A decay wants a value at each place, places rising; mend it.'),
    )
  if (x.length <= unknowns)
    return fail(
      problem('missing', `${x.length} samples cannot tell ${unknowns} numbers; give more of them.`),
    )
  const samples = { x, y }
  const few = thinned(samples)
  const near = beginnings(few, terms)
    .map((begin) => descend(few, begin, hasLevel))
    .reduce((a, b) => (b.squares < a.squares ? b : a))
  const found = few === samples ? near : descend(samples, near.rates, hasLevel)
  return ok({
    terms: found.rates
      .map((log, k) => ({ amplitude: found.solution[k] ?? 0, rate: Math.exp(log) }))
      .toSorted((a, b) => b.rate - a.rate),
    level: hasLevel ? (found.solution[terms] ?? 0) : 0,
    squares: found.squares,
  })
}
