import { type Problem, problem } from '../../base/problem.ts'
import type { ReadElement } from '../../base/xmlReader.ts'
import type { ProcessStep } from '../../process/processList.ts'
import { type ClfOperator, refuse } from './clfOperator.ts'
import { readClfCdl } from './readClfCdl.ts'
import { readClfMatrix } from './readClfMatrix.ts'
import { readClfRange } from './readClfRange.ts'
import { readClfCube, readClfCurve } from './readClfTable.ts'

/** How an operator is read, and what may stand in it besides descriptions. */
type Reader = {
  readonly read: (operator: ClfOperator) => ProcessStep | undefined
  readonly attributes: readonly string[]
  readonly children: readonly string[]
}

const RANGE_ENDS = ['minInValue', 'maxInValue', 'minOutValue', 'maxOutValue']

const READERS: ReadonlyMap<string, Reader> = new Map([
  ['ASC_CDL', { read: readClfCdl, attributes: ['style'], children: ['SOPNode', 'SatNode'] }],
  ['Matrix', { read: readClfMatrix, attributes: [], children: ['Array'] }],
  ['Range', { read: readClfRange, attributes: ['style'], children: RANGE_ENDS }],
  [
    'LUT1D',
    {
      read: readClfCurve,
      attributes: ['interpolation', 'halfDomain', 'rawHalfs'],
      children: ['Array'],
    },
  ],
  ['LUT3D', { read: readClfCube, attributes: ['interpolation'], children: ['Array'] }],
])

const COMMON_ATTRIBUTES = ['id', 'name', 'inBitDepth', 'outBitDepth']

/** Operators of the format that have no exact form here. */
const NOT_CARRIED = ['Log', 'Exponent']

/** Signal level 1 as each bit depth writes it. */
const BIT_DEPTHS: ReadonlyMap<string, number> = new Map([
  ['8i', 255],
  ['10i', 1023],
  ['12i', 4095],
  ['16i', 65_535],
  ['16f', 1],
  ['32f', 1],
])

const SHOWN = 40

/** The level 1 of one side of an operator; refused where its bit depth is missing or unknown. */
const scaleOf = (
  element: ReadElement,
  attribute: 'inBitDepth' | 'outBitDepth',
  problems: Problem[],
): number | undefined => {
  const depth = element.attributes.get(attribute)
  const scale = depth === undefined ? undefined : BIT_DEPTHS.get(depth)
  const { name, line, column } = element
  const place = { line, column, field: attribute }
  if (depth === undefined)
    problems.push(problem('missing', `${name} has no ${attribute}; add it.`, place))
  else if (scale === undefined)
    problems.push(
      problem(
        'malformed',
        `${name} has the ${attribute} “${depth.slice(0, SHOWN)}”; known are ${[...BIT_DEPTHS.keys()].join(', ')}.`,
        place,
      ),
    )
  return scale
}

/** Refuses what an operator does not have: it might change what the operator does. */
const refuseUnknown = (operator: ClfOperator, { attributes, children }: Reader): void => {
  const { element } = operator
  for (const attribute of element.attributes.keys())
    if (!COMMON_ATTRIBUTES.includes(attribute) && !attributes.includes(attribute))
      refuse(
        operator,
        element,
        'cannot-decode',
        `has the attribute ${attribute.slice(0, SHOWN)}, which is not known; take it out if it does nothing`,
      )
  for (const child of element.children)
    if (child.name !== 'Description' && !children.includes(child.name))
      refuse(
        operator,
        child,
        'cannot-decode',
        `in ${element.name} is not known; take it out if it does nothing`,
      )
}

/** A step, and the line of the file its operator stands on. */
export type ClfStep = { readonly step: ProcessStep; readonly line: number }

const readStep = (element: ReadElement, problems: Problem[]): ClfStep | undefined => {
  const { name, line, column } = element
  const inScale = scaleOf(element, 'inBitDepth', problems)
  const outScale = scaleOf(element, 'outBitDepth', problems)
  if (NOT_CARRIED.includes(name)) {
    const says = `${name} cannot be carried exactly; put a LUT1D in its place with the program that made the file.`
    problems.push(problem('cannot-decode', says, { line, column, field: name }))
    return undefined
  }
  const reader = READERS.get(name)
  if (!reader || inScale === undefined || outScale === undefined) return undefined
  const operator: ClfOperator = { element, inScale, outScale, problems }
  refuseUnknown(operator, reader)
  const step = reader.read(operator)
  return step && { step, line }
}

/** Whether an element's name is that of an operator, carried or not. */
export const isClfOperator = (name: string): boolean =>
  READERS.has(name) || NOT_CARRIED.includes(name)

/** The steps of these operators, taken to signal. Adds a problem for all that cannot be carried. */
export const readClfSteps = (
  elements: readonly ReadElement[],
  problems: Problem[],
): readonly ClfStep[] => {
  for (const [index, element] of elements.entries()) {
    const before = elements[index - 1]?.attributes.get('outBitDepth')
    const own = element.attributes.get('inBitDepth')
    if (before === undefined || own === undefined || before === own) continue
    const { name, line, column } = element
    problems.push(
      problem(
        'conflict',
        `${name} has the inBitDepth ${own.slice(0, SHOWN)}, but the one before it has the outBitDepth ${before.slice(0, SHOWN)}; make them alike.`,
        { line, column, field: 'inBitDepth' },
      ),
    )
  }
  return elements.flatMap((element) => readStep(element, problems) ?? [])
}
