import { at } from '../base/assert.ts'
import { type Descent, descendMoves, moved } from './descendMoves.ts'
import type { Margins } from './excessCost.ts'
import { ALL_MOVES, isWithin, type Move, SIMPLE_SETS, TRIPLES, WIDE_SETS } from './gradeMoves.ts'
import { HEAVY, passMoves } from './passMoves.ts'

/** A set of fewer moves is taken where it costs at most this much more than the best. */
const SIMPLER = 1.1

/** Or where it costs no more than this more: a mean ΔE00 that nobody sees. */
const UNSEEN = 0.15

/** Weights of the excess, one after the other: the first may pass through what must not stay. */
const WEIGHTS = [1e5, HEAVY]

/** A set of moves, how far each is made, and what that costs. */
type Trial = {
  readonly moves: readonly Move[]
  readonly amounts: readonly number[]
  readonly cost: number
}

/** Colours farther inside than this are not looked at while numbers are left out. */
const NEAR: Margins = { low: 0.12, high: 0.12 }

const NO_MARGINS = { low: 0, high: 0 } as const

/** What costs least and passes near `start`; undefined where it costs more than `most`. */
const descend = (
  descent: Descent,
  moves: readonly Move[],
  start: readonly number[],
  most: number,
  weights = WEIGHTS,
): Trial | undefined => {
  let amounts = start
  for (const weight of weights) {
    amounts = descendMoves(descent, moves, amounts, NO_MARGINS, weight, 15)
    // What is least while excess weighs little is no more than what is least of those that pass.
    if (descent.cost.costAt(moved(descent.present, moves, amounts)) > most) return undefined
  }
  const vector = moved(descent.present, moves, amounts)
  if (descent.excess.at(vector, NO_MARGINS) + descent.floor.at(vector) > 1e-6) return undefined
  return { moves, amounts, cost: descent.cost.costAt(vector) }
}

const stillOf = (moves: readonly Move[]): readonly number[] => moves.map(() => 0)

const byCost = (a: Trial, b: Trial): number => a.cost - b.cost

/** The same change as amounts of every number by itself. */
const singly = (present: Float64Array, { moves, amounts }: Trial): readonly number[] => [
  ...moved(present, moves, amounts).map((value, place) => value - at(present, place)),
]

/**
 * The grade that costs least of those that pass, with as few numbers changed as cost hardly more;
 * undefined where none was found. `search` and `settle` have the same cost; the excess of `search`
 * is of fewer colours, and quicker. `surely` is a grade that passes, to start from too.
 */
export const leastPassing = (
  search: Descent,
  settle: Descent,
  passes: (vector: Float64Array) => boolean,
  surely: Float64Array,
): Float64Array | undefined => {
  const { present } = search
  const wide = WIDE_SETS.map((moves) => descend(search, moves, stillOf(moves), Infinity))
  const starts = wide.flatMap((trial) => (trial ? [singly(present, trial)] : []))
  const fromAfar = [...surely.map((value, place) => value - at(present, place))]
  const rough = [
    ...[stillOf(ALL_MOVES), ...starts].map((from) => descend(search, ALL_MOVES, from, Infinity)),
    descend(search, ALL_MOVES, fromAfar, Infinity, [HEAVY]),
  ].filter((trial) => trial !== undefined)
  const [best] = rough.toSorted(byCost)
  if (!best) return undefined
  const near = settle.excess.near(moved(present, best.moves, best.amounts), NEAR)
  const close: Descent = { ...search, excess: near }
  const [start = best] = rough
    .flatMap(({ moves, amounts }) => descend(close, moves, amounts, Infinity, [HEAVY]) ?? [])
    .toSorted(byCost)
  const most = start.cost * SIMPLER + UNSEEN
  const isOpen = (moves: readonly Move[]) =>
    WIDE_SETS.some((set, k) => (wide[k]?.cost ?? Infinity) <= most && isWithin(moves, set))
  const trials = function* () {
    const fewest = simplified(close, start, most)
    for (const moves of SIMPLE_SETS)
      if (moves.length < fewest.moves.length && isOpen(moves))
        yield descend(close, moves, stillOf(moves), most)
    yield fewest
  }
  const finish = ({ moves, amounts }: Trial) =>
    passMoves({ descent: settle, passes }, moves, amounts)
  let least: Float64Array | undefined
  for (const trial of trials()) {
    const vector = trial && finish(trial)
    if (!vector) continue
    // To pass by the pixels may cost more than by the colours, and with few numbers much more.
    const value = settle.cost.costAt(vector)
    if (value <= most) return vector
    least ??= finish(start)
    if (!least || value <= settle.cost.costAt(least) * SIMPLER + UNSEEN) return vector
  }
  return least ?? finish(start)
}

/** A trial with as few of its moves as costs at most `most`: joined to one, or left out, in turn. */
const simplified = (search: Descent, from: Trial, most: number): Trial => {
  let trial = from
  const simplerSets = (): (readonly number[])[] => {
    const { moves, amounts } = trial
    const joined = TRIPLES.flatMap((triple) => {
      const parts = moves.filter((move) => move.length === 1 && triple.includes(at(move, 0)))
      return parts.length > 1 ? [parts.map((part) => moves.indexOf(part))] : []
    })
    const order = moves.map((_, k) => k)
    const small = order.toSorted((a, b) => Math.abs(at(amounts, a)) - Math.abs(at(amounts, b)))
    return [...joined, ...small.map((k) => [k])]
  }
  const without = (places: readonly number[]): Trial | undefined => {
    const rest = trial.moves.flatMap((move, k) => (places.includes(k) ? [] : [[move, k] as const]))
    const moves = rest.map(([move]) => move)
    const amounts = rest.map(([, k]) => at(trial.amounts, k))
    if (places.length > 1) {
      moves.push(places.flatMap((k) => at(trial.moves, k)))
      amounts.push(places.reduce((sum, k) => sum + at(trial.amounts, k) / places.length, 0))
    }
    return moves.length > 0 ? descend(search, moves, amounts, most, [HEAVY]) : undefined
  }
  for (;;) {
    let simpler: Trial | undefined
    for (const places of simplerSets()) {
      simpler = without(places)
      if (simpler) break
    }
    if (!simpler) return trial
    trial = simpler
  }
}
