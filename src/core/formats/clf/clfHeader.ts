import { type Problem, problem } from '../../base/problem.ts'
import type { ReadElement } from '../../base/xmlReader.ts'

/** The namespace of the Common LUT Format by SMPTE ST 2136-1, as its files have it. */
export const SMPTE_CLF_NAMESPACE = 'http://www.smpte-ra.org/ns/2136-1/2024'

/**
 * Besides it, that of version 3 by the Academy (S-2014-006), those of version 2 (from memory), and
 * none.
 */
const NAMESPACES = [
  SMPTE_CLF_NAMESPACE,
  'urn:AMPAS:CLF:v3.0',
  'urn:AMPAS:CLF:v2.0',
  'urn:NATAS:AMPAS:LUT:v2.0',
  '',
]

const VERSIONS = ['2', '2.0', '3', '3.0', 'ST2136-1:2024']

const UUID_URN = /^urn:uuid:[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/iu

const SHOWN = 60

/** Whether the root of a document is a process list of a namespace known here. */
export const isClfRoot = ({ name, namespace }: ReadElement): boolean =>
  name === 'ProcessList' && NAMESPACES.includes(namespace)

const checkVersion = (root: ReadElement, problems: Problem[]): void => {
  const version = root.attributes.get('compCLFversion')
  const place = { line: root.line, column: root.column, field: 'compCLFversion' }
  if (version === undefined && root.namespace !== SMPTE_CLF_NAMESPACE)
    problems.push(problem('missing', 'ProcessList has no compCLFversion; add it.', place))
  if (version !== undefined && !VERSIONS.includes(version))
    problems.push(
      problem(
        'unknown-format',
        `ProcessList is of version “${version.slice(0, SHOWN)}”; read are 2, 3 and ST2136-1:2024.`,
        place,
      ),
    )
}

/**
 * The id of a process list, by its attribute or its element Id, and its version: adds a problem
 * where either is missing or wrong. By SMPTE both may be left out, and an Id is a urn:uuid.
 */
export const readClfHeader = (root: ReadElement, problems: Problem[]): string => {
  checkVersion(root, problems)
  const isSmpte = root.namespace === SMPTE_CLF_NAMESPACE
  const element = root.children.find(({ name }) => name === 'Id')
  const idOfElement = element?.text.trim()
  if (element && isSmpte && !UUID_URN.test(idOfElement ?? ''))
    problems.push(
      problem('malformed', 'Id must be a urn:uuid of 32 hexadecimal digits; mend it.', {
        line: element.line,
        column: element.column,
        field: 'Id',
      }),
    )
  const attribute = root.attributes.get('id')
  const place = { line: root.line, column: root.column, field: 'id' }
  if (attribute === '')
    problems.push(problem('malformed', 'ProcessList has an empty id; fill it in.', place))
  const id = attribute ?? idOfElement
  if (id === undefined && !isSmpte)
    problems.push(problem('missing', 'ProcessList has no id; add it.', place))
  return id ?? ''
}
