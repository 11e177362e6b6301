import { at } from '../base/assert.ts'
import { gradeChannel } from '../colour/grade.ts'
import { GRADE_BOUNDS, LEAST_SLOPE } from '../colour/gradeBounds.ts'
import { leastSquares } from './leastSquares.ts'

export type GradeTerm = 'lift' | 'gamma' | 'gain'

/** The grade of one channel. */
export type ChannelGrade = Readonly<Record<GradeTerm, number>>

/** A signal `x` of the channel and what it is to come out as. */
export type Pair = { readonly x: number; readonly y: number }

/** Fine enough to keep apart the gammas that solve one channel: there are two at most. */
const GAMMA_STEPS = 60
const HALVINGS = 60

const isAllowed = (channel: ChannelGrade): boolean =>
  (['lift', 'gamma', 'gain'] as const).every(
    (term) => channel[term] >= GRADE_BOUNDS[term][0] && channel[term] <= GRADE_BOUNDS[term][1],
  ) && channel.gain - channel.lift >= LEAST_SLOPE

/** What must come before the power 1/gamma for `y` to come after it. */
const beforePower = (y: number, gamma: number): number => (y > 0 ? y ** gamma : y)

/**
 * The gamma, nearest to the present one, that puts three points (signal, level before the power)
 * on one line. Undefined where none within bounds does.
 */
const alignGamma = (
  pointsAt: (gamma: number) => readonly Pair[],
  present: number,
): number | undefined => {
  const [low, high] = GRADE_BOUNDS.gamma
  const gammaAt = (t: number) => low * (high / low) ** t
  const bendAt = (t: number): number => {
    const [a, b, c] = pointsAt(gammaAt(t)) as [Pair, Pair, Pair]
    return (b.y - a.y) * (c.x - a.x) - (c.y - a.y) * (b.x - a.x)
  }
  const found: number[] = []
  for (let k = 0; k < GAMMA_STEPS; k++) {
    let from = k / GAMMA_STEPS
    let to = (k + 1) / GAMMA_STEPS
    const isAbove = bendAt(from) > 0
    if (bendAt(to) > 0 === isAbove) continue
    for (let n = 0; n < HALVINGS; n++) {
      const middle = (from + to) / 2
      if (bendAt(middle) > 0 === isAbove) from = middle
      else to = middle
    }
    found.push(gammaAt((from + to) / 2))
  }
  const distance = (gamma: number) => Math.abs(Math.log(gamma / present))
  return found.toSorted((a, b) => distance(a) - distance(b))[0]
}

/**
 * The channel's grade that takes every pair's x to its y exactly, changing as many terms as there
 * are pairs. Before the power a channel is a line: through the pairs, and through (0, lift) and
 * (1, gain) where these stay. Two points make the line; gamma is what puts a third on it.
 * Undefined where no numbers within the bounds do it.
 */
export const solveChannel = (
  pairs: readonly Pair[],
  present: ChannelGrade,
  changed: readonly GradeTerm[],
): ChannelGrade | undefined => {
  const pointsAt = (gamma: number): readonly Pair[] => [
    ...pairs.map(({ x, y }) => ({ x, y: beforePower(y, gamma) })),
    ...(changed.includes('lift') ? [] : [{ x: 0, y: present.lift }]),
    ...(changed.includes('gain') ? [] : [{ x: 1, y: present.gain }]),
  ]
  const gamma = changed.includes('gamma') ? alignGamma(pointsAt, present.gamma) : present.gamma
  if (gamma === undefined) return undefined
  const line = pointsAt(gamma).toSorted((a, b) => a.x - b.x)
  const from = at(line, 0)
  const to = at(line, line.length - 1)
  const levelAt = (x: number) => from.y + ((to.y - from.y) / (to.x - from.x)) * (x - from.x)
  const solved = {
    lift: changed.includes('lift') ? levelAt(0) : present.lift,
    gamma,
    gain: changed.includes('gain') ? levelAt(1) : present.gain,
  }
  return isAllowed(solved) ? solved : undefined
}

/** The same as near as the bounds let it come: least squares of what is left of the pairs. */
export const nearestChannel = (
  pairs: readonly Pair[],
  present: ChannelGrade,
  changed: readonly GradeTerm[],
): ChannelGrade => {
  const channelOf = (values: readonly number[]): ChannelGrade => ({
    ...present,
    ...Object.fromEntries(changed.map((term, i) => [term, at(values, i)])),
  })
  const nearest = channelOf(
    leastSquares(
      (values) => {
        const { lift, gamma, gain } = channelOf(values)
        return Float64Array.from(pairs, ({ x, y }) => gradeChannel(x, lift, gamma, gain) - y)
      },
      changed.map((term) => present[term]),
      {
        low: changed.map((term) => GRADE_BOUNDS[term][0]),
        high: changed.map((term) => GRADE_BOUNDS[term][1]),
      },
    ),
  )
  return { ...nearest, gain: Math.max(nearest.gain, nearest.lift + LEAST_SLOPE) }
}
