import { type Problem, problem } from '../../base/problem.ts'
import { fail, type Result, resultOf } from '../../base/result.ts'
import { type ReadElement, readXml } from '../../base/xmlReader.ts'
import { type Cdl, checkCdl } from '../../colour/cdl.ts'
import type { Triple } from '../../colour/triple.ts'

/** One correction of a file, with what was written about it and about the decision it stands in. */
export type ReadCorrection = {
  readonly id: string | undefined
  readonly cdl: Cdl
  readonly descriptions: readonly string[]
  readonly line: number
}

const NAMESPACES = ['', 'urn:ASC:CDL:v1.01', 'urn:ASC:CDL:v1.2']

const ROOTS = ['ColorCorrection', 'ColorCorrectionCollection', 'ColorDecisionList']

const ENTRIES = ['ColorCorrection', 'ColorCorrectionRef']

/** `SATNode` is an alias that other writers use. */
const SAT_NODES = ['SatNode', 'SATNode']

const decimals = (text: string): number[] =>
  text
    .trim()
    .split(/\s+/u)
    .map((each) => (/^[+-]?(\d+\.?\d*|\.\d+)([eE][+-]?\d+)?$/u.test(each) ? Number(each) : NaN))

/** Also what InputDescription and ViewingDescription say. */
const isDescription = ({ name }: ReadElement): boolean => name.endsWith('Description')

const descriptionsIn = ({ children }: ReadElement): string[] =>
  children.flatMap((child) => (isDescription(child) ? [child.text.trim()] : descriptionsIn(child)))

const readCorrection = (element: ReadElement, problems: Problem[]): ReadCorrection => {
  const at = (place: ReadElement, field: string) => ({
    line: place.line,
    column: place.column,
    field,
  })
  const triple = (parent: ReadElement | undefined, name: string, rest: number): Triple => {
    const child = parent?.children.find((each) => each.name === name)
    if (!child) return [rest, rest, rest]
    const [r = NaN, g = NaN, b = NaN, ...more] = decimals(child.text)
    if (![r, g, b].every(Number.isFinite) || more.length > 0) {
      problems.push(
        problem(
          'malformed',
          `${name} must hold three decimals, not “${child.text.trim()}”.`,
          at(child, name),
        ),
      )
      return [rest, rest, rest]
    }
    return [r, g, b]
  }
  const sop = element.children.find(({ name }) => name === 'SOPNode')
  const sat = element.children.find(({ name }) => SAT_NODES.includes(name))
  const satValue = sat?.children.find(({ name }) => name === 'Saturation')
  const [saturation = NaN, ...moreSaturation] = satValue ? decimals(satValue.text) : [1]
  if (satValue && (!Number.isFinite(saturation) || moreSaturation.length > 0))
    problems.push(
      problem(
        'malformed',
        `Saturation must hold one decimal, not “${satValue.text.trim()}”.`,
        at(satValue, 'Saturation'),
      ),
    )
  const cdl: Cdl = {
    slope: triple(sop, 'Slope', 1),
    offset: triple(sop, 'Offset', 0),
    power: triple(sop, 'Power', 1),
    saturation: Number.isFinite(saturation) ? saturation : 1,
  }
  const checked = checkCdl(cdl)
  if (!checked.ok)
    for (const each of checked.problems)
      problems.push({ ...each, at: at(element, each.at?.field ?? 'ColorCorrection') })
  const id = element.attributes.get('id') || undefined
  return { id, cdl, descriptions: descriptionsIn(element), line: element.line }
}

/** A correction or a reference to one, with the decision it stands in. */
type Entry = { readonly element: ReadElement; readonly decision: ReadElement | undefined }

const entriesIn = (element: ReadElement, decision?: ReadElement): readonly Entry[] =>
  ENTRIES.includes(element.name)
    ? [{ element, decision }]
    : element.children.flatMap((child) =>
        entriesIn(child, element.name === 'ColorDecision' ? element : decision),
      )

/** The correction a reference names, if the file holds just one of that id. */
const referenced = (
  { line, column, attributes }: ReadElement,
  entries: readonly Entry[],
  problems: Problem[],
): ReadElement | undefined => {
  const ref = attributes.get('ref') ?? ''
  const named = entries.filter(
    ({ element }) => element.name === 'ColorCorrection' && element.attributes.get('id') === ref,
  )
  const place = { line, column, field: 'ColorCorrectionRef' }
  if (named.length === 0)
    problems.push(
      problem('not-found', `The file holds no ColorCorrection of the id “${ref}”; add it.`, place),
    )
  if (named.length > 1)
    problems.push(
      problem('conflict', `The file holds ${named.length} corrections of the id “${ref}”.`, place),
    )
  return named.length === 1 ? named[0]?.element : undefined
}

/** The element without anything of another namespace than the file's. */
const ofNamespace = (element: ReadElement, namespace: string): ReadElement => ({
  ...element,
  children: element.children
    .filter((child) => child.namespace === namespace)
    .map((child) => ofNamespace(child, namespace)),
})

/**
 * The corrections of an ASC CDL file: a single one (.cc), a collection (.ccc) or a decision list
 * (.cdl, one correction a decision, its own or a reference to another in the file), in namespace
 * v1.01, v1.2 or none. Elements the format does not know are passed over. Missing nodes take their
 * defaults (1, 0, 1, 1); anything out of range is refused with its line.
 */
export const readCcc = (text: string): Result<readonly ReadCorrection[]> => {
  const document = readXml(text)
  if (!document.ok) return document
  const root = document.value
  if (!ROOTS.includes(root.name) || !NAMESPACES.includes(root.namespace))
    return fail(
      problem('unknown-format', `The file holds <${root.name}>, which is not ASC CDL.`, {
        line: root.line,
        column: root.column,
      }),
    )
  const problems: Problem[] = []
  const entries = entriesIn(ofNamespace(root, root.namespace))
  const corrections = entries.flatMap(({ element, decision }) => {
    const isReference = element.name === 'ColorCorrectionRef'
    const meant = isReference ? referenced(element, entries, problems) : element
    if (!meant) return []
    const read = readCorrection(meant, isReference ? [] : problems)
    const above = decision?.children.filter(isDescription).map(({ text }) => text.trim()) ?? []
    return [{ ...read, descriptions: [...above, ...read.descriptions], line: element.line }]
  })
  if (corrections.length === 0)
    problems.push(
      problem('missing', 'The file holds no ColorCorrection; add one.', { line: root.line }),
    )
  return resultOf(corrections, problems)
}
