import { type Adjustment, readingsOutside } from '../../src/core/lineup/adjustment.ts'
import { solveAdjustment } from '../../src/core/lineup/solveAdjustment.ts'
import { begun, type MadeMachine, madeMachine } from '../support/madeMachine.ts'

/** How a way of adjusting went: machines brought inside, and how many readings more than controls. */
export type Adjusted = { readonly done: number; readonly readingsMore: number }

const SEEDS = 1000

/** Readings beyond the number of controls that either way may take. */
const MOST_MORE = 30

type Way = (adjustment: Adjustment, round: number) => readonly number[] | undefined

/** All controls at once, as `solveAdjustment` advises. */
const atOnce: Way = (adjustment) => {
  const advice = solveAdjustment(adjustment)
  if (!advice.ok) throw new Error(advice.problems[0].says)
  const now = adjustment.log.at(-1)?.settings ?? []
  const { value } = advice
  if (value.kind === 'done') return undefined
  if (value.kind === 'exercise')
    return now.map((each, j) => (j === value.control ? value.to : each))
  return value.plan.settings
}

/**
 * One control after another, round and round, as by eye: each is moved a little to see what its own
 * reading does, and then set so that this reading would be right.
 */
const oneByOne: Way = ({ controls, readings, log }, round) => {
  const last = log.at(-1)
  if (!last || readingsOutside(readings, last.values).length === 0) return undefined
  const turn = Math.floor((round % (2 * controls.length)) / 2)
  const control = controls[turn]
  const aim = readings[turn]?.aim ?? 0
  if (!control) return undefined
  const range = control.high - control.low
  const at = last.settings[turn] ?? 0
  const within = (value: number) => Math.min(control.high, Math.max(control.low, value))
  const to = (value: number) => last.settings.map((each, j) => (j === turn ? value : each))
  if (round % 2 === 0) return to(within(at + (at - control.low > range / 2 ? -0.1 : 0.1) * range))
  const before = log.at(-2)
  const moved = at - (before?.settings[turn] ?? at)
  const slope = ((last.values[turn] ?? 0) - (before?.values[turn] ?? 0)) / (moved || 1)
  return to(within(at + (slope === 0 ? 0 : (aim - (last.values[turn] ?? 0)) / slope)))
}

const readingsFor = (machine: MadeMachine, way: Way): number | undefined => {
  let adjustment = begun(machine)
  const most = machine.controls.length + MOST_MORE
  for (let round = 0; adjustment.log.length <= most; round++) {
    const settings = way(adjustment, round)
    if (!settings) return adjustment.log.length
    const entry = { settings, values: machine.read(settings) }
    adjustment = { ...adjustment, log: [...adjustment.log, entry] }
  }
  return undefined
}

const adjusted = (way: Way): Adjusted => {
  const more: number[] = []
  for (let seed = 1; seed <= SEEDS; seed++) {
    const machine = madeMachine(seed, true)
    const readings = readingsFor(machine, way)
    if (readings !== undefined) more.push(readings - machine.controls.length)
  }
  const sum = more.reduce((total, each) => total + each, 0)
  return { done: more.length / SEEDS, readingsMore: sum / Math.max(1, more.length) }
}

/** Both ways on the same 1,000 made-up machines that can be lined up. */
export const compareAdjusting = (): { readonly atOnce: Adjusted; readonly oneByOne: Adjusted } => ({
  atOnce: adjusted(atOnce),
  oneByOne: adjusted(oneByOne),
})
