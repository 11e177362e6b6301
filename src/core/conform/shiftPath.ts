import { BLANK_BELOW, frameCost } from './frameCost.ts'
import type { ReelLooks } from './reelLooks.ts'
import type { ShiftCandidate } from './shiftCandidates.ts'

/** Frames in a row that are found under one shift, or nowhere (undefined). */
export type ShiftRun = {
  readonly from: number
  readonly to: number
  readonly shift: number | undefined
  /** Mean cost of its frames. */
  readonly cost: number
}

/**
 * What it costs to change to another shift: anywhere, where a shot begins or nothing is seen, where
 * a shot begins on both reels.
 */
const CHANGE_COST = 20
const CHANGE_AT_SHOT = 4.5
const CHANGE_AT_BOTH = 4

/** The shifts tried on each frame, those of candidates that reach it. */
const shiftsByFrame = (candidates: readonly ShiftCandidate[], frames: number) => {
  const begins = new Map<number, number[]>()
  const ends = new Map<number, number[]>()
  const put = (map: Map<number, number[]>, at: number, shift: number): void => {
    const list = map.get(at)
    if (list) list.push(shift)
    else map.set(at, [shift])
  }
  for (const { shift, from, to } of candidates) {
    put(begins, Math.max(0, from), shift)
    put(ends, Math.min(frames, to), shift)
  }
  const counts = new Map<number, number>()
  return (n: number): readonly number[] => {
    for (const shift of ends.get(n) ?? []) {
      const left = (counts.get(shift) ?? 1) - 1
      if (left > 0) counts.set(shift, left)
      else counts.delete(shift)
    }
    for (const shift of begins.get(n) ?? []) counts.set(shift, (counts.get(shift) ?? 0) + 1)
    return [...counts.keys()]
  }
}

type Step = {
  /** Shifts of this frame; the last state, past them, is that it is found nowhere. */
  readonly shifts: readonly number[]
  readonly costs: Float32Array
  /** For each state, the state of the frame before that leads to it. */
  readonly before: Int32Array
}

/**
 * Which shift each frame of the new reel is found under, so that the costs of all frames and of
 * all changes of shift add up to the least (Viterbi 1967). `oldShots` and `freshShots` are the
 * frames on which shots begin.
 */
export const shiftPath = (
  old: ReelLooks,
  fresh: ReelLooks,
  candidates: readonly ShiftCandidate[],
  oldShots: ReadonlySet<number>,
  freshShots: ReadonlySet<number>,
): readonly ShiftRun[] => {
  const shiftsAt = shiftsByFrame(candidates, fresh.frames)
  const steps: Step[] = []
  const isBlankAt = (n: number): boolean => (fresh.deviations[n] ?? 0) < BLANK_BELOW
  const changeCost = (n: number, shift: number | undefined): number => {
    if (n > 0 && (isBlankAt(n - 1) || isBlankAt(n))) return CHANGE_AT_SHOT
    if (!freshShots.has(n)) return CHANGE_COST
    return shift === undefined || oldShots.has(n - shift) ? CHANGE_AT_BOTH : CHANGE_AT_SHOT
  }
  let sums = new Float64Array(0)
  let states = new Map<number | undefined, number>()
  for (let n = 0; n < fresh.frames; n++) {
    const shifts = shiftsAt(n).filter((shift) => n - shift >= 0 && n - shift < old.frames)
    const costs = Float32Array.from([...shifts, undefined], (shift) =>
      shift === undefined ? 0 : frameCost(old, n - shift, fresh, n),
    )
    const before = new Int32Array(costs.length)
    const next = new Float64Array(costs.length)
    const cheapest = sums.indexOf(Math.min(...sums))
    for (let state = 0; state < costs.length; state++) {
      const same = states.get(shifts[state])
      const stay = same === undefined ? Number.POSITIVE_INFINITY : (sums[same] as number)
      const cost = changeCost(n, shifts[state])
      const change = n === 0 ? cost : (sums[cheapest] as number) + cost
      before[state] = same !== undefined && stay <= change ? same : cheapest
      next[state] = Math.min(stay, change) + (costs[state] as number)
    }
    steps.push({ shifts, costs, before })
    sums = next
    states = new Map([...shifts, undefined].map((shift, state) => [shift, state]))
  }
  const runs: { from: number; to: number; shift: number | undefined; cost: number }[] = []
  let state = sums.indexOf(Math.min(...sums))
  for (let n = fresh.frames - 1; n >= 0; n--) {
    const { shifts, costs, before } = steps[n] as Step
    const shift = shifts[state]
    const cost = costs[state] as number
    const run = runs.at(-1)
    if (run && run.shift === shift) {
      run.from = n
      run.cost += cost
    } else runs.push({ from: n, to: n + 1, shift, cost })
    state = before[state] as number
  }
  return runs
    .reverse()
    .map(({ from, to, shift, cost }) => ({ from, to, shift, cost: cost / (to - from) }))
}
