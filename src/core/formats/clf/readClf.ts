import { type Problem, problem } from '../../base/problem.ts'
import { fail, ok, type Result } from '../../base/result.ts'
import { type ReadElement, readXml } from '../../base/xmlReader.ts'
import { NAME_LIMIT } from '../../job/limits.ts'
import { checkProcessList } from '../../process/checkProcessList.ts'
import type { ProcessList } from '../../process/processList.ts'
import { isClfRoot, readClfHeader } from './clfHeader.ts'
import { type ClfStep, isClfOperator, readClfSteps } from './readClfSteps.ts'

/** A Common LUT Format file, read. */
export type ReadClf = {
  readonly list: ProcessList
  /** '' where it has none, which ST 2136-1 allows. */
  readonly id: string
  readonly descriptions: readonly string[]
  readonly inputDescriptor: string
  readonly outputDescriptor: string
  /** What could not be taken from it, each with its line. It was read all the same. */
  readonly notTaken: readonly Problem[]
}

/** What stands in a process list besides its operators. */
const ABOUT = ['Id', 'Description', 'InputDescriptor', 'OutputDescriptor', 'Info']

const ROOT_ATTRIBUTES = ['id', 'name', 'compCLFversion']

const SHOWN = 40

const placeOf = ({ line, column, name }: ReadElement) => ({ line, column, field: name })

/** The element without anything of another namespace, of which a problem is added to `notTaken`. */
const ofNamespace = (
  element: ReadElement,
  namespace: string,
  notTaken: Problem[],
): ReadElement => ({
  ...element,
  children: element.children.flatMap((child) => {
    if (child.namespace === namespace)
      return child.name === 'Info' ? child : ofNamespace(child, namespace, notTaken)
    notTaken.push(
      problem(
        'unknown-format',
        `${child.name.slice(0, SHOWN)} is of another namespace than the list and was passed over.`,
        placeOf(child),
      ),
    )
    return []
  }),
})

const hasWords = ({ attributes, children }: ReadElement): boolean =>
  attributes.has('id') ||
  attributes.has('name') ||
  children.some(({ name }) => name === 'Description')

/** What a job does not keep of a list that it carries. */
const notKept = (root: ReadElement, steps: readonly ClfStep[]): readonly Problem[] => {
  const info = root.children.find(({ name }) => name === 'Info')
  const worded = root.children.find((each) => isClfOperator(each.name) && hasWords(each))
  const [only] = steps
  const isClampingGrade =
    steps.length === 1 && only?.step.kind === 'cdl' && only.step.style === 'forward'
  const attributes = [...root.attributes.keys()].filter((name) => !ROOT_ATTRIBUTES.includes(name))
  const further = ['InputDescriptor', 'OutputDescriptor'].flatMap((name) =>
    root.children.filter((child) => child.name === name).slice(1, 2),
  )
  return [
    ...attributes.map((name) =>
      problem('unknown-format', `The attribute ${name.slice(0, SHOWN)} was passed over.`, {
        line: root.line,
        column: root.column,
        field: name,
      }),
    ),
    ...further.map((child) =>
      problem('conflict', `Just the first ${child.name} was taken.`, placeOf(child)),
    ),
    ...(info ? [problem('unknown-format', 'Info was passed over.', placeOf(info))] : []),
    ...(worded
      ? [
          problem(
            'unknown-format',
            'Names, ids and descriptions of single operators were passed over.',
            placeOf(worded),
          ),
        ]
      : []),
    ...(isClampingGrade
      ? [
          problem(
            'conflict',
            'As a grade this ASC_CDL is taken without the clamps to 0…1 of its style Fwd; in a base it keeps them.',
            { line: only.line, field: 'ASC_CDL' },
          ),
        ]
      : []),
  ]
}

const textsOf = (root: ReadElement, name: string): readonly string[] =>
  root.children.filter((child) => child.name === name).map(({ text }) => text.trim())

/**
 * A process list of the Common LUT Format (SMPTE ST 2136-1, versions 2 and 3 before it), its bit
 * depths taken out. Carried are ASC_CDL, Matrix, Range, LUT1D and LUT3D; all that a job cannot
 * carry exactly is refused by its name, with its line.
 */
export const readClf = (text: string): Result<ReadClf> => {
  const document = readXml(text)
  if (!document.ok) return document
  if (!isClfRoot(document.value))
    return fail(
      problem(
        'unknown-format',
        `The file holds <${document.value.name.slice(0, SHOWN)}>, which is not a process list known here.`,
        { line: document.value.line, column: document.value.column },
      ),
    )
  const notTaken: Problem[] = []
  const root = ofNamespace(document.value, document.value.namespace, notTaken)
  const problems: Problem[] = []
  const id = readClfHeader(root, problems)
  for (const child of root.children)
    if (!ABOUT.includes(child.name) && !isClfOperator(child.name))
      problems.push(
        problem(
          'cannot-decode',
          `${child.name.slice(0, SHOWN)} is no operator known here; take it out if it does nothing.`,
          placeOf(child),
        ),
      )
  const operators = root.children.filter(({ name }) => isClfOperator(name))
  if (operators.length === 0)
    problems.push(problem('missing', 'ProcessList has no operator; add one.', placeOf(root)))
  const steps = readClfSteps(operators, problems)
  const whole = root.attributes.get('name') || id
  const name = whole.slice(0, NAME_LIMIT).replace(/[\ud800-\udbff]$/u, '')
  if (name !== whole)
    notTaken.push(
      problem(
        'too-large',
        `Of the name, just the first ${NAME_LIMIT} characters were taken.`,
        placeOf(root),
      ),
    )
  const list: ProcessList = { name, steps: steps.map(({ step }) => step) }
  if (problems.length === 0)
    for (const each of checkProcessList(list)) {
      const index = /^steps\.(\d+)$/u.exec(each.at?.field ?? '')?.[1]
      const { line } = (index === undefined ? undefined : steps[Number(index)]) ?? root
      problems.push({ ...each, at: { line } })
    }
  const [first, ...rest] = problems
  if (first) return fail(first, ...rest)
  return ok({
    list,
    id,
    descriptions: textsOf(root, 'Description'),
    inputDescriptor: textsOf(root, 'InputDescriptor')[0] ?? '',
    outputDescriptor: textsOf(root, 'OutputDescriptor')[0] ?? '',
    notTaken: [...notTaken, ...notKept(root, steps)],
  })
}
