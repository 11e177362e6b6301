import { readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import { expect, it } from 'vitest'
import { gradeColour } from '../../../src/core/colour/grade.ts'

it('the worked example of docs/job-format.md is what the program does', () => {
  const page = readFileSync(resolve(import.meta.dirname, '../../../docs/job-format.md'), 'utf8')
  const printed = /\*\*\(([\d., ]+)\)\*\*/u.exec(page)?.[1]?.split(', ').map(Number)
  const grade = {
    lift: [0.02, 0, -0.01],
    gamma: [1.2, 1, 0.9],
    gain: [1.1, 1, 0.95],
    saturation: 1.1,
  } as const
  const out = gradeColour([0.5, 0.4, 0.3], grade)
  expect(printed).toHaveLength(3)
  for (const [i, value] of (printed ?? []).entries()) expect(out[i]).toBeCloseTo(value, 6)
})
