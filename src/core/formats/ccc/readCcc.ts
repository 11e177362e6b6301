import { type Problem, problem } from '../../base/problem.ts'
import { fail, type Result, resultOf } from '../../base/result.ts'
import { type ReadElement, readXml } from '../../base/xmlReader.ts'
import { type Cdl, checkCdl } from '../../colour/cdl.ts'
import type { Triple } from '../../colour/triple.ts'

/** One correction of a file, with what was written about it. */
export type ReadCorrection = {
  readonly id: string | undefined
  readonly cdl: Cdl
  readonly descriptions: readonly string[]
  readonly line: number
}

const NAMESPACES = ['', 'urn:ASC:CDL:v1.01', 'urn:ASC:CDL:v1.2']

const ROOTS = ['ColorCorrection', 'ColorCorrectionCollection', 'ColorDecisionList']

/** `SATNode` is an alias that other writers use. */
const SAT_NODES = ['SatNode', 'SATNode']

const decimals = (text: string): number[] =>
  text
    .trim()
    .split(/\s+/u)
    .map((each) => (/^[+-]?(\d+\.?\d*|\.\d+)([eE][+-]?\d+)?$/u.test(each) ? Number(each) : NaN))

const descriptionsIn = ({ children }: ReadElement): string[] =>
  children.flatMap((child) =>
    child.name.endsWith('Description') ? [child.text.trim()] : descriptionsIn(child),
  )

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

const correctionsIn = (element: ReadElement): readonly ReadElement[] =>
  element.name === 'ColorCorrection' ? [element] : element.children.flatMap(correctionsIn)

/**
 * The corrections of an ASC CDL file: a single one (.cc), a collection (.ccc) or a decision list
 * (.cdl), in namespace v1.01, v1.2 or none. Missing nodes take their defaults (1, 0, 1, 1);
 * anything out of range is refused with its line.
 */
export const readCcc = (text: string): Result<readonly ReadCorrection[]> => {
  const document = readXml(text)
  if (!document.ok) return document
  const root = document.value
  if (!ROOTS.includes(root.name) || !NAMESPACES.includes(root.namespace))
    return fail(
      problem('unknown-format', `The file holds <${root.name}>, which is not ASC CDL.`, {
        line: root.line,
      }),
    )
  const problems: Problem[] = []
  const corrections = correctionsIn(root).map((element) => readCorrection(element, problems))
  if (corrections.length === 0)
    problems.push(problem('missing', 'The file holds no ColorCorrection.', { line: root.line }))
  return resultOf(corrections, problems)
}
