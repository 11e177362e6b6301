import { findBareAmpersand } from './bareAmpersand.ts'
import { type Problem, problem } from './problem.ts'

/** What is wrong with an XML text, in the parser's words or ours, and the line and column of it. */
export type XmlFault = {
  readonly says: string
  /** The character, from 0, at which the parser stumbled; 0 where we refuse what it took. */
  readonly stumbledAt: number
  readonly line: number
  readonly column: number
  /** The line of the start tag of the innermost element that is open. */
  readonly openLine: number | undefined
}

const MOST_SHOWN = 60

/** What the parser says most, and ours for it; `…` is where a name goes, `#` the line of the open element. */
const OURS: readonly (readonly [RegExp, string])[] = [
  [/^unclosed tag: (.*)$/su, 'the element “…” opened in line # is never closed; close it'],
  [
    /^unexpected close tag\.$/u,
    'an element is closed while one inside it is open; close the inner one first',
  ],
  [/^unmatched closing tag: (.*)\.$/su, '“…” is closed but not open; take this end tag out'],
  [/^unexpected end\.$/u, 'it ends in the middle; get the whole file again'],
  [/^unbound namespace prefix: "(.*)"\.$/su, 'the prefix “…” has no namespace; declare it'],
  [
    /^(?:undefined entity|disallowed character in entity name)\.$/u,
    'an entity is not known here; write the character itself, and “&” as “&amp;”',
  ],
  [
    /^malformed character entity\.$/u,
    'the number of a character is none that XML has; write the character itself',
  ],
  [/^duplicate attribute: (?:\{.*\})?(.*)\.$/su, 'the attribute “…” stands twice; take one out'],
  [/^attribute without value\.$/u, 'an attribute has no value; give it one in quotes'],
  [/^unquoted attribute value\.$/u, 'the value of an attribute is not in quotes; put it in quotes'],
  [
    /^no whitespace between attributes\.$/u,
    'two attributes run together; put a space between them',
  ],
  [/^disallowed character\.$/u, 'a character stands here that XML does not allow; take it out'],
  [/^disallowed character in tag name$/u, 'this “<” begins no element; write it as “&lt;”'],
  [
    /^disallowed character in tag name\.$/u,
    'an element’s name has a character names have not; mend it',
  ],
  [
    /^disallowed character in attribute name\.$/u,
    'an attribute is broken; write it as name="value"',
  ],
  [/^text data outside of root node\.$/u, 'text stands outside the first element; take it out'],
  [
    /^documents may contain only one root\.$/u,
    'a second element follows the one that holds all; keep one',
  ],
  [/^document must contain a root element\.$/u, 'it has no element; get the file again'],
  [/^the string "\]\]>" is disallowed in char data\.$/u, 'text holds “]]>”; write it as “]]&gt;”'],
  [/^weird empty close tag\.$/u, 'an end tag has no name; give it that of its element'],
  [
    /^(?:an|the) XML declaration must (?:be|appear) at the start of the document\.$/u,
    'the XML declaration is not the first thing in the file; take out what stands before it',
  ],
  [/^malformed comment\.$/u, 'a comment has “--” in it or is not closed; mend it'],
]

const inOurWords = ({ says, line, openLine }: XmlFault): string => {
  for (const [pattern, ours] of OURS) {
    const found = pattern.exec(says)
    // Given by a function, the name is not looked through for what `replace` reads as its own.
    if (found)
      return ours
        .replace('#', String(openLine ?? line))
        .replace('…', () => (found[1] ?? '').slice(0, MOST_SHOWN))
  }
  return says.replace(/\.$/u, '')
}

const placeAt = (text: string, at: number): { readonly line: number; readonly column: number } => {
  const ends = text.slice(0, at).matchAll(/\r\n|\r|\n/gu)
  let line = 1
  let begin = 0
  for (const end of ends) {
    line++
    begin = end.index + end[0].length
  }
  return { line, column: at - begin + 1 }
}

/**
 * Why an XML text cannot be read. An `&` that stands for itself is named where it is: the parser
 * takes what follows it for a name and stumbles only far behind it.
 */
export const xmlRefusal = (text: string, fault: XmlFault): Problem => {
  const bare = findBareAmpersand(text, fault.stumbledAt)
  if (bare === undefined) {
    const { line, column } = fault
    const says = `This XML cannot be read: ${inOurWords(fault)}.`
    return problem('malformed', says, { line, column })
  }
  const place = placeAt(text, bare)
  return problem(
    'malformed',
    `This XML cannot be read: an “&” in line ${place.line} must be written “&amp;”.`,
    place,
  )
}
