import { expect, test } from 'vitest'
import { gradeToCdl } from '../../../src/core/colour/cdl.ts'
import { type Grade, IDENTITY_GRADE } from '../../../src/core/colour/grade.ts'
import { gradeOfProcess } from '../../../src/core/process/gradeOfProcess.ts'
import type { CdlStep, MatrixStep, ProcessStep } from '../../../src/core/process/processList.ts'

const grade: Grade = {
  lift: [0.02, 0.01, 0.03],
  gamma: [1.15, 1.05, 1.1],
  gain: [1.1, 1, 0.95],
  saturation: 1.2,
}
const cdl: CdlStep = { kind: 'cdl', style: 'forward-no-clamp', cdl: gradeToCdl(grade) }
const identity: MatrixStep = {
  kind: 'matrix',
  rows: [
    [1, 0, 0],
    [0, 1, 0],
    [0, 0, 1],
  ],
  offset: [0, 0, 0],
}

const of = (...steps: readonly ProcessStep[]) => gradeOfProcess({ name: 'test', steps })

test('a list of one ASC CDL forward is its grade, with clamps or without', () => {
  expect(of(cdl)).toEqual(grade)
  expect(of({ ...cdl, style: 'forward' })).toEqual(grade)
})

test('steps that change nothing do not count', () => {
  const range = { kind: 'range', low: [0.1, 0.1], high: [0.9, 0.9], clamps: false } as const
  expect(of(identity, cdl, range)).toEqual(grade)
  expect(of(identity)).toEqual(IDENTITY_GRADE)
})

test.each<[string, readonly ProcessStep[]]>([
  ['two corrections', [cdl, cdl]],
  ['a correction in reverse', [{ ...cdl, style: 'reverse-no-clamp' }]],
  ['a matrix that moves levels', [{ ...identity, offset: [0, 0.1, 0] }]],
  ['a range that clamps', [{ kind: 'range', low: [0, 0], high: [1, 1], clamps: true }]],
  ['a curve', [{ kind: 'curve', channels: 1, points: 2, values: [0, 1] }]],
  [
    'numbers past those of a grade',
    [{ ...cdl, cdl: { ...cdl.cdl, offset: [2e6, 0, 0] as const } }],
  ],
])('%s is no grade', (_, steps) => {
  expect(of(...steps)).toBeUndefined()
})
