import { execFileSync } from 'node:child_process'
import { join } from 'node:path'
import fc from 'fast-check'
import { expect, test } from 'vitest'
import type { Triple } from '../../src/core/colour/triple.ts'
import { applyProcess } from '../../src/core/process/applyProcess.ts'
import type { ProcessStep } from '../../src/core/process/processList.ts'
import { between, seeded } from '../kernel/randomPictures.ts'
import { MADE_LISTS } from '../support/madeLists.ts'
import { anyStep } from '../support/processSteps.ts'

type Case = { readonly steps: readonly ProcessStep[]; readonly colours: readonly Triple[] }

const random = seeded(12)

/** Values that float32 holds, so that handing them over changes nothing. */
const colour = (): Triple => {
  const any = () => Math.fround(between(random, -0.3, 1.3))
  return [any(), any(), any()]
}

const colours = (count: number): readonly Triple[] => Array.from({ length: count }, colour)

/** Both ends of a range with one end are the same for OpenColorIO, and it clamps. */
const isKnown = (step: ProcessStep): boolean =>
  step.kind !== 'range' || (step.low !== null && step.high !== null) || step.clamps

const cases: readonly Case[] = [
  ...Object.values(MADE_LISTS).map(({ steps }) => ({ steps, colours: colours(2000) })),
  ...fc
    .sample(fc.array(anyStep('usual').filter(isKnown), { minLength: 1, maxLength: 3 }), {
      seed: 1,
      numRuns: 2000,
    })
    .map((steps) => ({ steps, colours: colours(10) })),
]

const ask = (): readonly (readonly number[])[] =>
  JSON.parse(
    execFileSync(
      process.env.REFERENCE_PYTHON ?? 'python3',
      [join(import.meta.dirname, 'openColorIoProcess.py')],
      { input: JSON.stringify(cases), maxBuffer: 2 ** 28 },
    ).toString(),
  )

test('process lists give what OpenColorIO gives', () => {
  const answers = ask()
  expect(answers).toHaveLength(cases.length)
  const largest = new Map<string, number>()
  for (const [i, { steps, colours }] of cases.entries()) {
    const name = steps.length === 1 ? (steps[0]?.kind ?? '') : 'several'
    for (const [n, from] of colours.entries()) {
      const ours = applyProcess({ name: '', steps }, from)
      for (const c of [0, 1, 2] as const) {
        const theirs = answers[i]?.[3 * n + c] ?? Number.NaN
        const apart = Math.abs(ours[c] - theirs) / Math.max(1, Math.abs(theirs))
        expect(apart).toBeLessThan(1)
        largest.set(name, Math.max(largest.get(name) ?? 0, apart))
      }
    }
  }
  console.log([...largest].map(([name, apart]) => `${name}: ${apart.toExponential(1)}`).join(', '))
  for (const apart of largest.values()) expect(apart).toBeLessThan(5e-6)
})
