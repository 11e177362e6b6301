import { describe, expect, it } from 'vitest'
import type { Adjustment } from '../../../src/core/lineup/adjustment.ts'
import { type Advice, solveAdjustment } from '../../../src/core/lineup/solveAdjustment.ts'
import { begun, type MadeMachine, madeMachine } from '../../support/madeMachine.ts'

const adviceOn = (adjustment: Adjustment): Advice => {
  const advice = solveAdjustment(adjustment)
  if (!advice.ok) throw new Error(advice.problems[0].says)
  return advice.value
}

/** Follows the advice until it is done, cannot be done, or so many readings were taken. */
const followed = (machine: MadeMachine, most: number) => {
  let adjustment = begun(machine)
  for (;;) {
    const advice = adviceOn(adjustment)
    const { log, controls } = adjustment
    if (advice.kind === 'done' || advice.kind === 'cannot' || log.length >= most)
      return { advice, readings: log.length }
    const now = log.at(-1)?.settings ?? []
    const settings =
      advice.kind === 'set'
        ? advice.plan.settings
        : now.map((value, j) => (j === advice.control ? advice.to : value))
    settings.forEach((value, j) => {
      expect(value).toBeGreaterThanOrEqual(controls[j]?.low ?? 0)
      expect(value).toBeLessThanOrEqual(controls[j]?.high ?? 0)
    })
    adjustment = { ...adjustment, log: [...log, { settings, values: machine.read(settings) }] }
  }
}

const SEEDS = Array.from({ length: 1000 }, (_, seed) => seed + 1)

describe('made-up machines', () => {
  it('that can be lined up are so within n + 3 readings, 95 of 100 at least', () => {
    const done = SEEDS.filter((seed) => {
      const machine = madeMachine(seed, true)
      return followed(machine, machine.controls.length + 3).advice.kind === 'done'
    })
    expect(done.length).toBeGreaterThanOrEqual(950)
  })

  it('that cannot are told so, and those that can hardly ever', () => {
    const cannot = (canBe: boolean) =>
      SEEDS.filter((seed) => {
        const machine = madeMachine(seed, canBe)
        return followed(machine, machine.controls.length + 3).advice.kind === 'cannot'
      }).length
    expect(cannot(false)).toBeGreaterThanOrEqual(990)
    expect(cannot(true)).toBeLessThanOrEqual(10)
  })
})

const control = (id: string, low = 0, high = 10) => ({ id, name: id, unit: '', low, high })
const reading = (id: string, aim: number, limit = 0.1) => ({
  ...{ id, name: id, unit: '', aim, low: aim - limit, high: aim + limit },
})

describe('what is said', () => {
  it('names a control that was not moved, and moves it away from its nearer limit', () => {
    const adjustment = {
      controls: [control('gain'), control('balance')],
      readings: [reading('level', 5)],
      log: [{ settings: [9, 5], values: [9] }],
    }
    expect(adviceOn(adjustment)).toEqual({ kind: 'exercise', control: 0, to: 8 })
  })

  it('sets all controls at once where they act on each other', () => {
    const read = ([a = 0, b = 0]: readonly number[]) => [a + 0.8 * b, 0.7 * a + b]
    const adjustment = {
      controls: [control('a'), control('b')],
      readings: [reading('first', 8), reading('second', 7)],
      log: [
        [2, 2],
        [3, 2],
        [3, 3],
      ].map((settings) => ({ settings, values: read(settings) })),
    }
    const advice = adviceOn(adjustment)
    if (advice.kind !== 'set') throw new Error(advice.kind)
    const [first = 0, second = 0] = read(advice.plan.settings)
    expect(first).toBeCloseTo(8, 2)
    expect(second).toBeCloseTo(7, 2)
  })

  it('says what is out of reach and why: hard limits, no control, or a trade', () => {
    const at = (values: readonly number[], settings: readonly number[]) => ({ settings, values })
    const limited = {
      controls: [control('beam', 0, 250)],
      readings: [reading('level', 700)],
      log: [at([300], [150]), at([350], [175])],
    }
    expect(adviceOn(limited)).toMatchObject({
      kind: 'cannot',
      plan: { settings: [250], rests: ['high'] },
      unreached: [{ reading: 0, why: 'limits' }],
    })
    const deaf = {
      controls: [control('beam')],
      readings: [reading('focus', 5), reading('level', 2)],
      log: [at([1, 1], [1]), at([1, 2.5], [2])],
    }
    expect(adviceOn(deaf)).toMatchObject({
      kind: 'cannot',
      unreached: [{ reading: 0, why: 'deaf' }],
    })
    const trade = {
      controls: [control('gain', -10, 10)],
      readings: [reading('red', 1), reading('blue', -1)],
      log: [at([0, 0], [0]), at([1, 1], [1])],
    }
    const advice = adviceOn(trade)
    expect(advice.kind === 'cannot' && advice.unreached.map(({ why }) => why)).toEqual([
      'trade',
      'trade',
    ])
  })

  it('names controls that do almost the same', () => {
    const adjustment = {
      controls: [control('coarse'), control('fine')],
      readings: [reading('level', 9), reading('black', 4)],
      log: [
        { settings: [1, 1], values: [2, 1] },
        { settings: [2, 1], values: [3, 1.5] },
        { settings: [2, 2], values: [3.1, 1.551] },
      ],
    }
    const advice = adviceOn(adjustment)
    expect('plan' in advice && advice.plan.alike).toMatchObject([{ first: 0, second: 1 }])
  })

  it.each([
    ['no control', { controls: [] }, 'no control'],
    [
      'hard limits the wrong way round',
      { controls: [control('beam', 5, 1)] },
      'hard limits of beam',
    ],
    [
      'an aim outside its limits',
      { readings: [{ ...reading('level', 5), aim: 9 }] },
      'What level aims at',
    ],
    [
      'a control past its hard limit',
      { log: [{ settings: [251], values: [1] }] },
      'past its hard limit',
    ],
    [
      'a value missing',
      { log: [{ settings: [1], values: [] }] },
      'Observation 1 has not one number',
    ],
    ['nothing read', { log: [] }, 'Nothing was read yet'],
  ])('refuses %s by name', (_, change, says) => {
    const plain: Adjustment = {
      controls: [control('beam', 0, 250)],
      readings: [reading('level', 5)],
      log: [{ settings: [1], values: [1] }],
    }
    const refused = solveAdjustment({ ...plain, ...change })
    expect(!refused.ok && refused.problems[0].says).toContain(says)
  })
})
