import { type Problem, type ProblemCode, problem } from '../../base/problem.ts'
import { lineOfText, type ReadElement } from '../../base/xmlReader.ts'
import { readDecimals } from '../readDecimals.ts'

/** An operator being read: its element, and the signal levels 1 in the numbers of its two sides. */
export type ClfOperator = {
  readonly element: ReadElement
  readonly inScale: number
  readonly outScale: number
  readonly problems: Problem[]
}

/** Adds a problem at an element; `says` begins after its name. */
export const refuse = (
  { problems }: ClfOperator,
  { name, line, column }: ReadElement,
  code: ProblemCode,
  says: string,
): undefined => {
  problems.push(problem(code, `${name} ${says}.`, { line, column, field: name }))
}

/** The child of a name; undefined where there is none, refused where there are several. */
export const childOf = (
  operator: ClfOperator,
  parent: ReadElement,
  name: string,
): ReadElement | undefined => {
  const [child, second] = parent.children.filter((each) => each.name === name)
  if (second)
    return refuse(operator, second, 'conflict', `stands in ${parent.name} twice; keep one`)
  return child
}

/** As `childOf`, and refused where there is none. */
export const neededChild = (
  operator: ClfOperator,
  parent: ReadElement,
  name: string,
): ReadElement | undefined =>
  parent.children.some((each) => each.name === name)
    ? childOf(operator, parent, name)
    : refuse(operator, parent, 'missing', `has no ${name}; add it`)

const SHOWN = 20

/** The numbers of an element, as many as there must be; undefined and refused where they are not. */
export const numbersOf = (
  operator: ClfOperator,
  element: ReadElement,
  count: number,
): readonly number[] | undefined => {
  const { name, column, text } = element
  const { values, wrongAt, moreAt } = readDecimals(text, count)
  const wrong = wrongAt ?? moreAt
  const needs = `${name} must hold ${count === 1 ? 'one number' : `${count} numbers`}`
  if (wrong !== undefined) {
    const [word = ''] = text.slice(wrong, wrong + SHOWN).split(/\s/u, 1)
    const says =
      wrongAt === undefined
        ? `${needs}; more begin with “${word}”.`
        : `${needs}; “${word}” is not a finite decimal.`
    const line = lineOfText(element, wrong)
    const place = line === element.line ? { line, column } : { line }
    operator.problems.push(problem('malformed', says, { ...place, field: name }))
    return undefined
  }
  if (values.length < count)
    return refuse(
      operator,
      element,
      'malformed',
      `must hold ${count === 1 ? 'one number' : `${count} numbers`}; it has ${values.length}`,
    )
  return values
}

/** The value of an attribute, or of its default, as what it stands for; refused where unknown. */
export const choiceOf = <T>(
  operator: ClfOperator,
  attribute: string,
  choices: ReadonlyMap<string, T>,
  standard: string,
): T | undefined => {
  const word = operator.element.attributes.get(attribute) ?? standard
  const choice = choices.get(word)
  if (choice === undefined)
    return refuse(
      operator,
      operator.element,
      'cannot-decode',
      `has the ${attribute} “${word.slice(0, SHOWN)}”; known are ${[...choices.keys()].join(', ')}`,
    )
  return choice
}
