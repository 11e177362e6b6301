import { type Problem, problem } from '../../base/problem.ts'
import { fail, ok, type Result } from '../../base/result.ts'
import { type ReadElement, readXml } from '../../base/xmlReader.ts'
import type { Cdl } from '../../colour/cdl.ts'
import { type CdlProblems, nodesOf, placeOf, readCdlNumbers, SAT_NODES } from './cdlElement.ts'
import { type CdlWord, type CorrectionWords, isWord, wordsIn } from './cdlWords.ts'

/** One correction of a file, with all that was written about it and the decision it stands in. */
export type ReadCorrection = {
  /** '' where it has none. */
  readonly id: string
  readonly cdl: Cdl
  readonly words: CorrectionWords
  readonly line: number
}

/** An ASC CDL file, read. */
export type ReadCdl = {
  readonly words: readonly CdlWord[]
  readonly corrections: readonly ReadCorrection[]
  /** What could not be taken from it, each with its line. It was read all the same. */
  readonly notTaken: readonly Problem[]
}

const NAMESPACES = ['', 'urn:ASC:CDL:v1.01', 'urn:ASC:CDL:v1.2']

const ROOTS = ['ColorCorrection', 'ColorCorrectionCollection', 'ColorDecisionList']

/** What the format knows, by where it may stand. */
const KNOWN: ReadonlyMap<string, readonly string[]> = new Map<string, readonly string[]>([
  ['ColorDecisionList', ['ColorDecision']],
  ['ColorDecision', ['MediaRef', 'ColorCorrection', 'ColorCorrectionRef']],
  ['ColorCorrectionCollection', ['ColorCorrection']],
  ['ColorCorrection', ['SOPNode', ...SAT_NODES]],
  ['SOPNode', ['Slope', 'Offset', 'Power']],
  ...SAT_NODES.map((name) => [name, ['Saturation']] as const),
])

const SHOWN = 40

/** The sorts of unknown elements told one by one. */
const MOST_TOLD = 20

const isCorrection = ({ name }: ReadElement): boolean =>
  name === 'ColorCorrection' || name === 'ColorCorrectionRef'

/** A correction or a reference to one, with the decision it stands in. */
type Entry = { readonly element: ReadElement; readonly decision: ReadElement | undefined }

const entriesIn = (element: ReadElement, decision?: ReadElement): readonly Entry[] =>
  isCorrection(element)
    ? [{ element, decision }]
    : element.children.flatMap((child) =>
        entriesIn(child, element.name === 'ColorDecision' ? element : decision),
      )

/**
 * The element with just what the format knows, and with elements around corrections. What else
 * there is is passed over and told, once a name.
 */
const knownOf = (
  element: ReadElement,
  namespace: string,
  told: Map<string, Problem>,
): ReadElement => {
  const known = KNOWN.get(element.name)
  const tell = (child: ReadElement): void => {
    if (told.has(child.name) || told.size >= MOST_TOLD) return
    const says = `${child.name.slice(0, SHOWN)} is not known in ${element.name.slice(0, SHOWN)} and was passed over.`
    told.set(
      child.name,
      problem('unknown-format', says, placeOf(child, child.name.slice(0, SHOWN))),
    )
  }
  const children = element.children.flatMap((child) => {
    const isKnown = child.namespace === namespace && (isWord(child) || known?.includes(child.name))
    if (isKnown) return known ? knownOf(child, namespace, told) : child
    if (child.namespace === namespace && entriesIn(child).length > 0)
      return knownOf(child, namespace, told)
    if (known) tell(child)
    return []
  })
  return { ...element, children }
}

const readCorrection = (
  element: ReadElement,
  decision: ReadElement | undefined,
  problems: CdlProblems,
): ReadCorrection => {
  const nodes = nodesOf(element, problems)
  const id = element.attributes.get('id') ?? ''
  const mediaRefs = decision?.children.filter(({ name }) => name === 'MediaRef') ?? []
  return {
    id,
    cdl: readCdlNumbers(element, nodes, problems),
    words: {
      id,
      mediaRefs: mediaRefs.map(({ attributes }) => attributes.get('ref') ?? ''),
      decision: wordsIn(decision),
      correction: wordsIn(element),
      sop: wordsIn(nodes.sop),
      sat: wordsIn(nodes.sat),
    },
    line: element.line,
  }
}

const byId = (entries: readonly Entry[]): ReadonlyMap<string, readonly ReadElement[]> => {
  const corrections = new Map<string, ReadElement[]>()
  for (const { element } of entries) {
    if (element.name !== 'ColorCorrection') continue
    const id = element.attributes.get('id') ?? ''
    const alike = corrections.get(id)
    if (alike) alike.push(element)
    else corrections.set(id, [element])
  }
  return corrections
}

/** The correction a reference names, if the file holds just one of that id. */
const referenced = (
  reference: ReadElement,
  corrections: ReadonlyMap<string, readonly ReadElement[]>,
  { refused }: CdlProblems,
): ReadElement | undefined => {
  const ref = reference.attributes.get('ref') ?? ''
  const named = corrections.get(ref) ?? []
  const place = placeOf(reference, 'ColorCorrectionRef')
  const shown = ref.slice(0, SHOWN)
  if (named.length === 0)
    refused.push(
      problem(
        'not-found',
        `The file holds no ColorCorrection of the id “${shown}”; add it.`,
        place,
      ),
    )
  if (named.length > 1)
    refused.push(
      problem(
        'conflict',
        `The file holds ${named.length} corrections of the id “${shown}”.`,
        place,
      ),
    )
  return named.length === 1 ? named[0] : undefined
}

/** Decisions without a correction, which say nothing that can be taken. */
const emptyDecisions = (root: ReadElement): readonly Problem[] =>
  root.children
    .filter((child) => child.name === 'ColorDecision' && !child.children.some(isCorrection))
    .map((decision) =>
      problem(
        'missing',
        'This ColorDecision has no correction and was passed over.',
        placeOf(decision, 'ColorDecision'),
      ),
    )

/**
 * The corrections of an ASC CDL file: a single one (.cc), a collection (.ccc) or a decision list
 * (.cdl, one correction a decision, its own or a reference to another in the file), in namespace
 * v1.01, v1.2 or none. Elements the format does not know are passed over. Missing nodes take their
 * defaults (1, 0, 1, 1); anything out of range is refused with its line.
 */
export const readCdl = (text: string): Result<ReadCdl> => {
  const document = readXml(text)
  if (!document.ok) return document
  const { name, namespace } = document.value
  if (!ROOTS.includes(name) || !NAMESPACES.includes(namespace))
    return fail(
      problem(
        'unknown-format',
        `The file holds <${name.slice(0, SHOWN)}>, which is not ASC CDL.`,
        placeOf(document.value, name.slice(0, SHOWN)),
      ),
    )
  const told = new Map<string, Problem>()
  const root = knownOf(document.value, namespace, told)
  const problems: CdlProblems = { refused: [], notTaken: [] }
  const entries = entriesIn(root)
  const corrections = byId(entries)
  const read = entries.flatMap(({ element, decision }) => {
    if (element.name === 'ColorCorrection') return readCorrection(element, decision, problems)
    const meant = referenced(element, corrections, problems)
    if (!meant) return []
    const nobody: CdlProblems = { refused: [], notTaken: [] }
    return { ...readCorrection(meant, decision, nobody), line: element.line }
  })
  if (entries.length === 0)
    problems.refused.push(
      problem('missing', 'The file holds no ColorCorrection; add one.', placeOf(root, root.name)),
    )
  const [first, ...rest] = problems.refused
  if (first) return fail(first, ...rest)
  const notTaken = [...told.values(), ...emptyDecisions(root), ...problems.notTaken]
  return ok({
    words: root.name === 'ColorCorrection' ? [] : wordsIn(root),
    corrections: read,
    notTaken,
  })
}
