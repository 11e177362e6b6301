import type { ReadElement } from '../../base/xmlReader.ts'
import { type Cdl, checkCdl } from '../../colour/cdl.ts'
import type { Triple } from '../../colour/triple.ts'
import type { CdlStep, CdlStepStyle } from '../../process/processList.ts'
import {
  type ClfOperator,
  childOf,
  choiceOf,
  neededChild,
  numbersOf,
  refuse,
} from './clfOperator.ts'

const STYLES: ReadonlyMap<string, CdlStepStyle> = new Map([
  ['Fwd', 'forward'],
  ['Rev', 'reverse'],
  ['FwdNoClamp', 'forward-no-clamp'],
  ['RevNoClamp', 'reverse-no-clamp'],
])

const DEFAULTS: Cdl = { slope: [1, 1, 1], offset: [0, 0, 0], power: [1, 1, 1], saturation: 1 }

/** The elements by the field of a correction they hold. */
const ELEMENTS: ReadonlyMap<string, string> = new Map([
  ['slope', 'Slope'],
  ['offset', 'Offset'],
  ['power', 'Power'],
  ['saturation', 'Saturation'],
])

const elementOf = (operator: ClfOperator, field: string): ReadElement =>
  operator.element.children
    .flatMap(({ children }) => children)
    .find(({ name }) => name === ELEMENTS.get(field)) ?? operator.element

/** An ASC_CDL (ST 2136-1): either node may be left out, but no number of one that is there. */
export const readClfCdl = (operator: ClfOperator): CdlStep | undefined => {
  const { element, problems } = operator
  const before = problems.length
  const style = choiceOf(operator, 'style', STYLES, 'Fwd')
  const sop = childOf(operator, element, 'SOPNode')
  const triple = (name: string, standard: Triple): Triple => {
    const child = sop && neededChild(operator, sop, name)
    const [r, g, b] = (child && numbersOf(operator, child, 3)) ?? standard
    return [r ?? 0, g ?? 0, b ?? 0]
  }
  const sat = childOf(operator, element, 'SatNode')
  const saturation = sat && neededChild(operator, sat, 'Saturation')
  const cdl: Cdl = {
    slope: triple('Slope', DEFAULTS.slope),
    offset: triple('Offset', DEFAULTS.offset),
    power: triple('Power', DEFAULTS.power),
    saturation: (saturation && numbersOf(operator, saturation, 1)?.[0]) ?? DEFAULTS.saturation,
  }
  if (problems.length > before || style === undefined) return undefined
  const checked = checkCdl(cdl)
  if (!checked.ok) {
    for (const { code, says, at } of checked.problems) {
      const { line, column, name } = elementOf(operator, at?.field ?? '')
      problems.push({ code, says, at: { line, column, field: name } })
    }
    return undefined
  }
  const isReverse = style === 'reverse' || style === 'reverse-no-clamp'
  if (isReverse && (cdl.saturation === 0 || cdl.slope.includes(0)))
    return refuse(
      operator,
      elementOf(operator, cdl.saturation === 0 ? 'saturation' : 'slope'),
      'out-of-range',
      'is 0, which cannot be reversed; give a number above 0',
    )
  return { kind: 'cdl', style, cdl }
}
