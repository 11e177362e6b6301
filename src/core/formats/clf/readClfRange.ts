import type { RangeStep } from '../../process/processList.ts'
import { type ClfOperator, childOf, choiceOf, numbersOf, refuse } from './clfOperator.ts'

const CLAMPS: ReadonlyMap<string, boolean> = new Map([
  ['Clamp', true],
  ['noClamp', false],
])

/** How far from and to of a lone end may be apart: the decimals of codes of unlike depths. */
const SAME = 1e-6

type End = readonly [from: number, to: number] | null

/** One end of a Range as signal; null where it has none, undefined and refused where it is half. */
const endOf = (operator: ClfOperator, end: 'min' | 'max'): End | undefined => {
  const { element, inScale, outScale } = operator
  const from = childOf(operator, element, `${end}InValue`)
  const to = childOf(operator, element, `${end}OutValue`)
  if (!from && !to) return null
  if (!from || !to)
    return refuse(
      operator,
      from ?? to ?? element,
      'missing',
      `stands alone; ${end}InValue and ${end}OutValue go together`,
    )
  const [fromValue] = numbersOf(operator, from, 1) ?? []
  const [toValue] = numbersOf(operator, to, 1) ?? []
  if (fromValue === undefined || toValue === undefined) return undefined
  return [fromValue / inScale, toValue / outScale]
}

/** A Range: with both ends a line between them, with one only a limit. Clamps unless it says not. */
export const readClfRange = (operator: ClfOperator): RangeStep | undefined => {
  const { element } = operator
  const before = operator.problems.length
  const clamps = choiceOf(operator, 'style', CLAMPS, 'Clamp')
  const low = endOf(operator, 'min')
  const high = endOf(operator, 'max')
  if (clamps === undefined || low === undefined || high === undefined) return undefined
  if (operator.problems.length > before) return undefined
  if (low && high) {
    if (high[0] <= low[0])
      return refuse(
        operator,
        element,
        'out-of-range',
        'has its maxInValue not above its minInValue',
      )
    if (high[1] < low[1])
      return refuse(operator, element, 'out-of-range', 'has its maxOutValue below its minOutValue')
    return { kind: 'range', low, high, clamps }
  }
  const lone = low ?? high
  if (!lone) return refuse(operator, element, 'missing', 'has no limit; give one')
  if (!clamps)
    return refuse(operator, element, 'missing', 'of style noClamp needs both of its ends')
  const [from, to] = lone
  if (Math.abs(from - to) > SAME * Math.max(1, Math.abs(to)))
    return refuse(
      operator,
      element,
      'conflict',
      'has just one end, whose values in and out must be the same level',
    )
  return { kind: 'range', low: low && [to, to], high: high && [to, to], clamps }
}
