import { SaxesParser } from 'saxes'
import { problem } from './problem.ts'
import { fail, ok, type Result } from './result.ts'
import { type XmlFault, xmlRefusal } from './xmlRefusal.ts'

/**
 * An element as read: local name, namespace, line and column of the end of its start tag, its text
 * and what is inside it.
 */
export type ReadElement = {
  readonly name: string
  readonly namespace: string
  readonly line: number
  readonly column: number
  /** Those without a namespace, which is where a vocabulary's own attributes are. */
  readonly attributes: ReadonlyMap<string, string>
  readonly children: readonly ReadElement[]
  /** All text directly inside, joined. */
  readonly text: string
  /** Where text goes on after something else inside: from which character, on which line. */
  readonly resumes: readonly TextResume[]
}

type TextResume = { readonly from: number; readonly line: number }

type OpenElement = {
  -readonly [Key in keyof ReadElement]: ReadElement[Key] extends readonly (infer Item)[]
    ? Item[]
    : ReadElement[Key]
}

const DEEPEST = 32
const LARGEST = 32 * 2 ** 20
const MOST_ELEMENTS = 1_000_000

const NO_ATTRIBUTES: ReadonlyMap<string, string> = new Map()

const linesIn = (text: string, from = 0, to = text.length): number => {
  let lines = 0
  for (let at = text.indexOf('\n', from); at !== -1 && at < to; at = text.indexOf('\n', at + 1))
    lines++
  return lines
}

/** The line of the file that a character of an element's text is on. */
export const lineOfText = ({ line, text, resumes }: ReadElement, character: number): number => {
  const last = resumes.findLast(({ from }) => from <= character) ?? { from: 0, line }
  return last.line + linesIn(text, last.from, character)
}

/** Text is given to the parser in pieces, so that a refusal ends the reading soon. */
const CHUNK = 65_536

/**
 * An XML document → its root element. Refuses any document type declaration, more than 32 MB or a
 * million elements, and elements nested deeper than 32; tells line and column of what is wrong.
 */
export const readXml = (text: string): Result<ReadElement> => {
  if (text.length > LARGEST)
    return fail(
      problem('too-large', 'An XML file of more than 32 MB is not read; split it.', { line: 1 }),
    )
  const parser = new SaxesParser({ xmlns: true, position: true })
  const open: OpenElement[] = []
  let root: ReadElement | undefined
  let count = 0
  let refusal: XmlFault | undefined
  const refuse = (says: string, stumbledAt = 0): void => {
    const { line, column } = parser
    refusal ??= { says, stumbledAt, line, column, openLine: open.at(-1)?.line }
  }
  parser.on('error', (error) => refuse(error.message.replace(/^\d+:\d+: /u, ''), parser.position))
  parser.on('doctype', () => refuse('a document type declaration is not allowed; take it out'))
  parser.on('opentag', (tag) => {
    if (open.length >= DEEPEST) refuse(`elements are nested more than ${DEEPEST} deep`)
    if (++count > MOST_ELEMENTS) refuse('it has more than a million elements; split it')
    if (refusal) return
    const attributes = Object.values(tag.attributes).filter(({ uri }) => uri === '')
    open.push({
      name: tag.local,
      namespace: tag.uri,
      line: parser.line,
      column: parser.column,
      attributes:
        attributes.length === 0
          ? NO_ATTRIBUTES
          : new Map(attributes.map(({ local, value }) => [local, value])),
      children: [],
      text: '',
      resumes: [],
    })
  })
  const addText = (more: string): void => {
    const element = open.at(-1)
    if (!element) return
    const line = parser.line - linesIn(more)
    if (element.text !== '' || line !== element.line)
      element.resumes.push({ from: element.text.length, line })
    element.text += more
  }
  parser.on('text', addText)
  parser.on('cdata', addText)
  parser.on('closetag', () => {
    const element = open.pop()
    if (!element) return
    const parent = open.at(-1)
    if (parent) parent.children.push(element)
    else root = element
  })
  for (let from = 0; from < text.length && !refusal; from += CHUNK)
    parser.write(text.slice(from, from + CHUNK))
  if (!refusal) parser.close()
  if (refusal) return fail(xmlRefusal(text, refusal))
  return root
    ? ok(root)
    : fail(problem('malformed', 'This XML file has no element in it.', { line: 1 }))
}
