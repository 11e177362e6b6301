import { SaxesParser } from 'saxes'
import { problem } from './problem.ts'
import { fail, ok, type Result } from './result.ts'

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
}

type OpenElement = {
  -readonly [Key in keyof ReadElement]: Key extends 'children' ? ReadElement[] : ReadElement[Key]
}

const DEEPEST = 32
const LARGEST = 16 * 2 ** 20

/** Text is given to the parser in pieces, so that a refusal ends the reading soon. */
const CHUNK = 65_536

/**
 * An XML document → its root element. Refuses any document type declaration, more than 16 MB,
 * and elements nested deeper than 32; tells line and column of what is wrong.
 */
export const readXml = (text: string): Result<ReadElement> => {
  if (text.length > LARGEST)
    return fail(problem('too-large', 'An XML file of more than 16 MB is not read; split it.'))
  const parser = new SaxesParser({ xmlns: true, position: true })
  const open: OpenElement[] = []
  let root: ReadElement | undefined
  let refusal: { says: string; line: number; column: number } | undefined
  const refuse = (says: string): void => {
    refusal ??= { says, line: parser.line, column: parser.column }
  }
  parser.on('error', (error) => refuse(error.message.replace(/^\d+:\d+: /u, '')))
  parser.on('doctype', () => refuse('a document type declaration is not allowed; take it out'))
  parser.on('opentag', (tag) => {
    if (open.length >= DEEPEST) refuse(`elements are nested more than ${DEEPEST} deep`)
    if (refusal) return
    open.push({
      name: tag.local,
      namespace: tag.uri,
      line: parser.line,
      column: parser.column,
      attributes: new Map(
        Object.values(tag.attributes)
          .filter(({ uri }) => uri === '')
          .map(({ local, value }) => [local, value]),
      ),
      children: [],
      text: '',
    })
  })
  const addText = (more: string): void => {
    const element = open.at(-1)
    if (element) element.text += more
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
  if (refusal) {
    const { says, line, column } = refusal
    return fail(problem('malformed', `This XML cannot be read: ${says}.`, { line, column }))
  }
  return root ? ok(root) : fail(problem('malformed', 'This XML file has no element in it.'))
}
