import { problem } from '../base/problem.ts'
import { fail, ok, type Result } from '../base/result.ts'
import { type Bound, boundedLeastSquares, type Rest } from '../linear/boundedLeastSquares.ts'
import { type Adjustment, type Control, readingsOutside } from './adjustment.ts'
import { type AlikeControls, alikeControls, rangeOf, responseOf } from './response.ts'

/** What to do next with an adjustment. */
export type Advice =
  /** All readings are inside their limits. */
  | { readonly kind: 'done' }
  /** A control was not moved yet: move it by so much, to so much, and read everything. */
  | { readonly kind: 'exercise'; readonly control: number; readonly to: number }
  /** Set all controls so. */
  | { readonly kind: 'set'; readonly plan: SettingPlan }
  /** Nothing the controls can do brings every reading inside. */
  | {
      readonly kind: 'cannot'
      readonly plan: SettingPlan
      readonly unreached: readonly UnreachedReading[]
    }

/** All controls at once, and what is expected of it. */
export type SettingPlan = {
  readonly settings: readonly number[]
  /** Where a control ends on a hard limit, which. */
  readonly rests: readonly Rest[]
  /** What the readings are expected to be. */
  readonly expected: readonly number[]
  /** Controls that do almost the same: how they share the work is uncertain. */
  readonly alike: readonly AlikeControls[]
}

export type UnreachedReading = {
  readonly reading: number
  readonly expected: number
  /** 'deaf': no control moves it; 'limits': those that would end at their hard limits; else it is a trade. */
  readonly why: 'deaf' | 'limits' | 'trade'
}

/** A first move of a control, in parts of its range: well over noise, well within what is harmless. */
const FIRST_MOVE = 0.1

/** Rounds of weighing up what lies furthest out, and the power it comes to: close to the least worst. */
const ROUNDS = 40
const POWER = 8

/** Keeps controls that nothing turns on where they are; small beside any limit. */
const STAY = 1e-3

/** A reading that moves by less than this part of its limits over all of every control is deaf. */
const DEAF = 1e-6

/** Controls and readings that are said wrongly or do not fit together. */
const amiss = ({ controls, readings, log }: Adjustment): string | undefined => {
  if (controls.length === 0) return 'There is no control; name one.'
  if (readings.length === 0) return 'There is no reading; name one.'
  if (log.length === 0) return 'Nothing was read yet; begin with everything as it stands.'
  for (const { name, low, high } of controls)
    if (!(low < high))
      return `The hard limits of ${name} are the wrong way round or one; mend them.`
  for (const { name, aim, low, high } of readings)
    if (!(low < high && aim >= low && aim <= high))
      return `What ${name} aims at is not between its limits; mend them.`
  for (const [index, { settings, values }] of log.entries()) {
    if (settings.length !== controls.length || values.length !== readings.length)
      return `Observation ${index + 1} has not one number for every control and reading; mend it.`
    const far = controls.findIndex(
      ({ low, high }, j) => !((settings[j] ?? Number.NaN) >= low && (settings[j] ?? 0) <= high),
    )
    if (far >= 0)
      return `In observation ${index + 1} ${controls[far]?.name} stands past its hard limit; set it back before anything else.`
    if (!values.every(Number.isFinite))
      return `Observation ${index + 1} has a value that is no number.`
  }
  return undefined
}

/** A first move away from the nearer hard limit. */
const firstMove = (control: Control, now: number): number => {
  const { low, high } = control
  const step = FIRST_MOVE * rangeOf(control)
  return now - low > high - now ? Math.max(low, now - step) : Math.min(high, now + step)
}

/** The change of all controls, in parts of their ranges, that brings the readings nearest. */
const planOf = (adjustment: Adjustment): SettingPlan & { readonly worst: number } => {
  const { controls, readings, log } = adjustment
  const response = responseOf(adjustment)
  const now = log.at(-1) ?? { settings: [], values: [] }
  const half = readings.map(({ low, high }) => (high - low) / 2)
  const middle = readings.map(({ low, high }) => (low + high) / 2)
  const bounds = controls.map((control, j): Bound => {
    const at = now.settings[j] ?? 0
    return {
      low: (control.low - at) / rangeOf(control),
      high: (control.high - at) / rangeOf(control),
    }
  })
  const rowsOf = (weights: readonly number[]) => [
    ...response.slopes.map((row, i) =>
      row.map((slope) => (slope * (weights[i] ?? 1)) / (half[i] ?? 1)),
    ),
    ...controls.map((_, j) => controls.map((__, k) => (j === k ? STAY : 0))),
  ]
  const expectedOf = (step: readonly number[]): number[] =>
    response.slopes.map((row, i) =>
      row.reduce((sum, slope, j) => sum + slope * (step[j] ?? 0), now.values[i] ?? 0),
    )
  const solvedFor = (targets: readonly number[], weights: readonly number[]) =>
    boundedLeastSquares(
      rowsOf(weights),
      [
        ...targets.map(
          (target, i) => ((target - (now.values[i] ?? 0)) * (weights[i] ?? 1)) / (half[i] ?? 1),
        ),
        ...controls.map(() => 0),
      ],
      bounds,
    )
  const outBy = (expected: readonly number[]): number[] =>
    expected.map((value, i) => Math.abs(value - (middle[i] ?? 0)) / (half[i] ?? 1))
  let weights = readings.map(() => 1)
  let best = solvedFor(
    readings.map(({ aim }) => aim),
    weights,
  )
  let worst = Math.max(...outBy(expectedOf(best.solution)))
  // Where the nearest to all aims leaves a reading outside, the least worst of them all is looked for.
  for (let round = 0; round < ROUNDS && worst > 1; round++) {
    const solution = solvedFor(middle, weights)
    const out = outBy(expectedOf(solution.solution))
    const most = Math.max(...out)
    if (most < worst) [best, worst] = [solution, most]
    weights = weights.map((weight, i) =>
      Math.max(1e-3, weight * ((out[i] ?? 0) / (most || 1)) ** ((POWER - 2) / POWER)),
    )
    const top = Math.max(...weights)
    weights = weights.map((weight) => weight / top)
  }
  return {
    settings: controls.map((control, j) => {
      const to = (now.settings[j] ?? 0) + (best.solution[j] ?? 0) * rangeOf(control)
      return Math.min(control.high, Math.max(control.low, to))
    }),
    rests: best.rests,
    expected: expectedOf(best.solution),
    alike: alikeControls(adjustment, response),
    worst,
  }
}

const whyUnreached = (
  adjustment: Adjustment,
  plan: SettingPlan,
  reading: number,
): UnreachedReading => {
  const { slopes } = responseOf(adjustment)
  const { low = 0, high = 1 } = adjustment.readings[reading] ?? {}
  const row = slopes[reading] ?? []
  const reach = row.reduce((sum, slope) => sum + Math.abs(slope), 0)
  const expected = plan.expected[reading] ?? 0
  if (reach < DEAF * (high - low)) return { reading, expected, why: 'deaf' }
  const wants = expected > high ? -1 : 1
  const isSpent = row.every((slope, j) => {
    if (Math.abs(slope) < 0.02 * reach) return true
    const rest = plan.rests[j]
    return slope * wants > 0 ? rest === 'high' : rest === 'low'
  })
  return { reading, expected, why: isSpent ? 'limits' : 'trade' }
}

/**
 * What to do next with controls that act on each other: move one that was not moved yet, set all at
 * once, or know that it cannot be done. Each further observation corrects what is known. No control
 * is ever asked past its hard limits. Refuses what does not fit together, by name.
 */
export const solveAdjustment = (adjustment: Adjustment): Result<Advice> => {
  const fault = amiss(adjustment)
  if (fault !== undefined) return fail(problem('out-of-range', fault))
  const { controls, readings, log } = adjustment
  const now = log.at(-1) ?? { settings: [], values: [] }
  if (readingsOutside(readings, now.values).length === 0) return ok({ kind: 'done' })
  const { moved } = responseOf(adjustment)
  const unmoved = moved.indexOf(0)
  const control = controls[unmoved]
  if (control)
    return ok({
      kind: 'exercise',
      control: unmoved,
      to: firstMove(control, now.settings[unmoved] ?? control.low),
    })
  const { worst, ...plan } = planOf(adjustment)
  const unreached = readingsOutside(readings, plan.expected)
  if (worst <= 1 || unreached.length === 0) return ok({ kind: 'set', plan })
  return ok({
    kind: 'cannot',
    plan,
    unreached: unreached.map((reading) => whyUnreached(adjustment, plan, reading)),
  })
}
