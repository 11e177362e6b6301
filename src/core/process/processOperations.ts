import type { Cdl } from '../colour/cdl.ts'
import { HIGHEST_LEVEL, SATURATION_WEIGHTS } from '../colour/grade.ts'
import { IDENTITY_MATRIX3, type Matrix3 } from '../colour/matrix3.ts'
import { mapTriple, type Triple, triple } from '../colour/triple.ts'
import { heldReciprocal } from './applyCdlStep.ts'
import { rangeLine } from './applyProcess.ts'
import type { CdlStep, CubeStep, CurveStep, ProcessList, ProcessStep } from './processList.ts'

/** Rows times the colour plus `offset`, then every channel held from `least` to `most`. */
export type LinesOperation = {
  readonly kind: 'lines'
  readonly rows: Matrix3
  readonly offset: Triple
  readonly least: number
  readonly most: number
}

/** Levels above 0 to these powers, no further than `HIGHEST_LEVEL`. */
export type PowerOperation = { readonly kind: 'power'; readonly power: Triple }

/** The few kinds of arithmetic that the steps of a list are made of. */
export type ProcessOperation = LinesOperation | PowerOperation | CurveStep | CubeStep

const lines = (
  rows: Matrix3,
  offset: Triple,
  least = -HIGHEST_LEVEL,
  most = HIGHEST_LEVEL,
): LinesOperation => ({
  kind: 'lines',
  rows,
  offset,
  least: Math.max(least, -HIGHEST_LEVEL),
  most: Math.min(most, HIGHEST_LEVEL),
})

const across = ([r, g, b]: Triple): Matrix3 => [
  [r, 0, 0],
  [0, g, 0],
  [0, 0, b],
]

/** `saturate` as rows. */
const saturationRows = (saturation: number): Matrix3 => {
  const row = (own: number): Triple =>
    mapTriple(SATURATION_WEIGHTS, (weight, c) =>
      c === own ? weight + saturation * (1 - weight) : weight * (1 - saturation),
    )
  return [row(0), row(1), row(2)]
}

const powered = (power: Triple): readonly PowerOperation[] =>
  power.every((value) => value === 1) ? [] : [{ kind: 'power', power }]

type Limits = readonly [least: number, most: number] | readonly []

const cdlForward = ({ slope, offset, power, saturation }: Cdl, limits: Limits) => [
  lines(across(slope), offset, ...limits),
  ...powered(power),
  ...(saturation === 1 ? [] : [lines(saturationRows(saturation), triple(0), ...limits)]),
]

const cdlReverse = ({ slope, offset, power, saturation }: Cdl, limits: Limits) => {
  const back = mapTriple(slope, heldReciprocal)
  return [
    ...(limits.length === 0 ? [] : [lines(IDENTITY_MATRIX3, triple(0), ...limits)]),
    ...(saturation === 1
      ? []
      : [lines(saturationRows(heldReciprocal(saturation)), triple(0), ...limits)]),
    ...powered(mapTriple(power, heldReciprocal)),
    lines(
      across(back),
      mapTriple(back, (factor, c) => -offset[c] * factor),
      ...limits,
    ),
  ]
}

const cdlOperations = ({ cdl, style }: CdlStep): readonly ProcessOperation[] => {
  const limits: Limits = style === 'forward' || style === 'reverse' ? [0, 1] : []
  const isForward = style === 'forward' || style === 'forward-no-clamp'
  return isForward ? cdlForward(cdl, limits) : cdlReverse(cdl, limits)
}

const operationsOf = (step: ProcessStep): readonly ProcessOperation[] => {
  switch (step.kind) {
    case 'cdl':
      return cdlOperations(step)
    case 'matrix':
      return [lines(step.rows, step.offset)]
    case 'range': {
      const { slope, offset, least, most } = rangeLine(step)
      return [lines(across(triple(slope)), triple(offset), least, most)]
    }
    default:
      return [step]
  }
}

/** A list as the kernel and the preview run it: what `applyProcess` does, in fewer kinds of step. */
export const processOperations = ({ steps }: ProcessList): readonly ProcessOperation[] =>
  steps.flatMap(operationsOf)
