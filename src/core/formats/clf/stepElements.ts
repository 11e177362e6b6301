import type { XmlElement } from '../../base/xmlWriter.ts'
import type { Triple } from '../../colour/triple.ts'
import { rangeLine } from '../../process/applyProcess.ts'
import type {
  CdlStep,
  CdlStepStyle,
  MatrixStep,
  ProcessStep,
  RangeStep,
} from '../../process/processList.ts'
import { exactDecimal } from '../decimal.ts'
import type { SaidStep } from './baseSteps.ts'

const STYLES: Readonly<Record<CdlStepStyle, string>> = {
  forward: 'Fwd',
  reverse: 'Rev',
  'forward-no-clamp': 'FwdNoClamp',
  'reverse-no-clamp': 'RevNoClamp',
}

const DEPTHS = { inBitDepth: '32f', outBitDepth: '32f' }

const numbers = (values: readonly number[]): string => values.map(exactDecimal).join(' ')

/** Rows of so many numbers, a line each. */
const table = (values: readonly number[], columns: number): string => {
  const rows = Array.from({ length: values.length / columns }, (_, i) =>
    numbers(values.slice(i * columns, (i + 1) * columns)),
  )
  return `\n${rows.join('\n')}\n`
}

type Parts = {
  readonly attributes: Readonly<Record<string, string>>
  readonly inside: XmlElement[]
}

const triple = (name: string, values: Triple): XmlElement => ({ name, inside: numbers(values) })

const cdlParts = ({ style, cdl }: CdlStep): Parts => ({
  attributes: { style: STYLES[style] },
  inside: [
    {
      name: 'SOPNode',
      inside: [
        triple('Slope', cdl.slope),
        triple('Offset', cdl.offset),
        triple('Power', cdl.power),
      ],
    },
    { name: 'SatNode', inside: [{ name: 'Saturation', inside: exactDecimal(cdl.saturation) }] },
  ],
})

const matrixParts = ({ rows, offset }: MatrixStep): Parts => ({
  attributes: {},
  inside: [
    {
      name: 'Array',
      attributes: { dim: '3 4' },
      inside: table(
        rows.flatMap((row, c) => [...row, offset[c] ?? 0]),
        4,
      ),
    },
  ],
})

const rangeParts = ({ low, high, clamps }: RangeStep): Parts => {
  const value = (name: string, level: number | undefined): XmlElement[] =>
    level === undefined ? [] : [{ name, inside: exactDecimal(level) }]
  return {
    attributes: { style: clamps ? 'Clamp' : 'noClamp' },
    inside: [
      ...value('minInValue', low?.[0]),
      ...value('maxInValue', high?.[0]),
      ...value('minOutValue', low?.[1]),
      ...value('maxOutValue', high?.[1]),
    ],
  }
}

const NAMES = { cdl: 'ASC_CDL', matrix: 'Matrix', range: 'Range', curve: 'LUT1D', cube: 'LUT3D' }

const partsOf = (step: ProcessStep): Parts => {
  switch (step.kind) {
    case 'cdl':
      return cdlParts(step)
    case 'matrix':
      return matrixParts(step)
    case 'range':
      return rangeParts(step)
    case 'curve': {
      const { points, channels, values } = step
      const dim = `${points} ${channels}`
      return {
        attributes: { interpolation: 'linear' },
        inside: [{ name: 'Array', attributes: { dim }, inside: table(values, channels) }],
      }
    }
    case 'cube': {
      const { points, interpolation, values } = step
      const dim = `${points} ${points} ${points} 3`
      return {
        attributes: { interpolation },
        inside: [{ name: 'Array', attributes: { dim }, inside: table(values, 3) }],
      }
    }
  }
}

/**
 * The format's Range has a lone end only where it clamps, and there the same level in and out. A
 * range that moves the signal besides becomes a Matrix before it, one that does nothing is left out.
 */
const writable = (step: ProcessStep): readonly ProcessStep[] => {
  if (step.kind !== 'range' || (step.low && step.high)) return [step]
  const { offset } = rangeLine(step)
  const moved: MatrixStep = {
    kind: 'matrix',
    rows: [
      [1, 0, 0],
      [0, 1, 0],
      [0, 0, 1],
    ],
    offset: [offset, offset, offset],
  }
  const { low, high, clamps } = step
  const held: RangeStep = {
    ...step,
    low: low && [low[1], low[1]],
    high: high && [high[1], high[1]],
  }
  return [...(offset === 0 ? [] : [moved]), ...(clamps ? [held] : [])]
}

/** A step as operators of the Common LUT Format on 32-bit float signal, every number exact. */
export const stepElements = ({ says, step }: SaidStep): readonly XmlElement[] =>
  writable(step).map((each) => {
    const { attributes, inside } = partsOf(each)
    const description = says === '' ? [] : [{ name: 'Description', inside: says }]
    return {
      name: NAMES[each.kind],
      attributes: { ...DEPTHS, ...attributes },
      inside: [...description, ...inside],
    }
  })
