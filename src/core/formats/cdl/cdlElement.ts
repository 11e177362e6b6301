import { type Problem, problem } from '../../base/problem.ts'
import { lineOfText, type ReadElement } from '../../base/xmlReader.ts'
import { type Cdl, checkCdl } from '../../colour/cdl.ts'
import type { Triple } from '../../colour/triple.ts'
import { readDecimals } from '../readDecimals.ts'

/** What is refused of a file, and what is passed over. */
export type CdlProblems = { readonly refused: Problem[]; readonly notTaken: Problem[] }

/** `SATNode` is an alias that other writers use. */
export const SAT_NODES = ['SatNode', 'SATNode']

export const placeOf = ({ line, column }: ReadElement, field: string) => ({ line, column, field })

/** The one child of these names; undefined where there is none, refused where there are more. */
const onlyChild = (
  parent: ReadElement | undefined,
  names: readonly string[],
  { refused }: CdlProblems,
): ReadElement | undefined => {
  const [child, second] = parent?.children.filter(({ name }) => names.includes(name)) ?? []
  if (parent && second)
    refused.push(
      problem(
        'conflict',
        `${second.name} stands in ${parent.name} twice; keep one.`,
        placeOf(second, second.name),
      ),
    )
  return child
}

const COUNTS: ReadonlyMap<number, string> = new Map([
  [1, 'one decimal'],
  [3, 'three decimals'],
])

/** The numbers of a child, or its standard ones where it is not there, which is told. */
const numbersOf = (
  parent: ReadElement | undefined,
  name: string,
  standard: readonly number[],
  problems: CdlProblems,
): readonly number[] => {
  const child = onlyChild(parent, [name], problems)
  if (!parent) return standard
  if (!child) {
    const says = `${parent.name} has no ${name}; ${standard.join(' ')} was taken.`
    problems.notTaken.push(problem('missing', says, placeOf(parent, name)))
    return standard
  }
  const { values, wrongAt, moreAt } = readDecimals(child.text, standard.length)
  const wrong = wrongAt ?? moreAt
  if (wrong === undefined && values.length === standard.length) return values
  const line = wrong === undefined ? child.line : lineOfText(child, wrong)
  problems.refused.push(
    problem(
      'malformed',
      `${name} must hold ${COUNTS.get(standard.length)}, not “${child.text.trim().slice(0, 60)}”.`,
      line === child.line ? placeOf(child, name) : { line, field: name },
    ),
  )
  return standard
}

const FIELDS: ReadonlyMap<string, string> = new Map([
  ['slope', 'Slope'],
  ['offset', 'Offset'],
  ['power', 'Power'],
  ['saturation', 'Saturation'],
])

/** The nodes of a correction. */
export type CdlNodes = {
  readonly sop: ReadElement | undefined
  readonly sat: ReadElement | undefined
}

export const nodesOf = (element: ReadElement, problems: CdlProblems): CdlNodes => ({
  sop: onlyChild(element, ['SOPNode'], problems),
  sat: onlyChild(element, SAT_NODES, problems),
})

/** The numbers of a correction; what is missing or out of range is told with its line. */
export const readCdlNumbers = (
  element: ReadElement,
  { sop, sat }: CdlNodes,
  problems: CdlProblems,
): Cdl => {
  const triple = (name: string, value: number): Triple => {
    const [r, g, b] = numbersOf(sop, name, [value, value, value], problems)
    return [r ?? value, g ?? value, b ?? value]
  }
  const cdl: Cdl = {
    slope: triple('Slope', 1),
    offset: triple('Offset', 0),
    power: triple('Power', 1),
    saturation: numbersOf(sat, 'Saturation', [1], problems)[0] ?? 1,
  }
  const checked = checkCdl(cdl)
  if (checked.ok) return cdl
  const children = [sop, sat].flatMap((node) => node?.children ?? [])
  for (const { code, says, at } of checked.problems) {
    const name = FIELDS.get(at?.field ?? '')
    const place = children.find((child) => child.name === name) ?? element
    problems.refused.push(problem(code, says, placeOf(place, at?.field ?? 'ColorCorrection')))
  }
  return cdl
}
