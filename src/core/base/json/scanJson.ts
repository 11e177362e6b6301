import type { ProblemCode } from '../problem.ts'

/** Why a JSON text is refused: the end of a sentence. */
export type JsonRefusal = { readonly code: ProblemCode; readonly says: string }

/** What is told of a JSON text as it is gone through. A refusal given back ends it. */
export type JsonEvents = {
  readonly open: (isRecord: boolean, at: number) => JsonRefusal | undefined
  readonly close: () => void
  /** A name of a record, as it is spelt with its quotes. */
  readonly name: (spelt: string, at: number) => JsonRefusal | undefined
  /** A string (with its quotes), number or word, as it is spelt. */
  readonly scalar: (spelt: string, at: number) => JsonRefusal | undefined
}

/** What is wrong with a JSON text and where, counted in UTF-16 units from 0. */
export type JsonFault = JsonRefusal & { readonly at: number }

export type JsonTaken = {
  /** Whether NaN, Inf and Infinity are taken, which JSON has not. */
  readonly takesNonFinite?: boolean
  /** How deep records and lists may stand in one another. */
  readonly deepest?: number
}

const BYTE_ORDER_MARK = '\ufeff'
const NUMBER = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?/y
const WORD = /true|false|null/y
const NON_FINITE = /NaN|-?Inf(?:inity)?/y
const SPACE = /[ \t\n\r]*/y
// biome-ignore lint/suspicious/noControlCharactersInRegex: a string may not hold these (RFC 8259 §7)
const STRETCH = /[^"\\\u0000-\u001f]*/y
const ESCAPE = /\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4})/y

const endOf = (pattern: RegExp, text: string, at: number): number => {
  pattern.lastIndex = at
  return pattern.test(text) ? pattern.lastIndex : -1
}

const afterSpace = (text: string, at: number): number =>
  text.charCodeAt(at) > 0x20 ? at : endOf(SPACE, text, at)

/** The end of a string that begins at `at`; where it breaks off, that place with its bits turned. */
const stringEnd = (text: string, at: number): number => {
  let end = at + 1
  for (;;) {
    end = endOf(STRETCH, text, end)
    if (text[end] === '"') return end + 1
    const escaped = text[end] === '\\' ? endOf(ESCAPE, text, end) : -1
    if (escaped < 0) return ~end
    end = escaped
  }
}

const scalarEnd = (text: string, at: number, takesNonFinite: boolean): number => {
  if (text[at] === '"') return stringEnd(text, at)
  const ends = [NUMBER, WORD, ...(takesNonFinite ? [NON_FINITE] : [])]
  for (const pattern of ends) {
    const end = endOf(pattern, text, at)
    if (end > at) return end
  }
  return ~at
}

const malformed = (at: number, says: string): JsonFault => ({ code: 'malformed', at, says })

const brokenString = (text: string, at: number): JsonFault => {
  if (at >= text.length) return malformed(at, 'the text ends inside quotes')
  return text[at] === '\\'
    ? malformed(at, 'this is no escape that JSON has')
    : malformed(at, 'a control character stands inside quotes')
}

/**
 * Goes through a JSON text (RFC 8259), a byte order mark before it passed over, and tells of all
 * that is in it. Gives back what is wrong, or undefined. It does not call itself, so that no depth
 * of nesting is too much for it.
 */
export const scanJson = (
  text: string,
  events: JsonEvents,
  { takesNonFinite = false, deepest = Infinity }: JsonTaken = {},
): JsonFault | undefined => {
  const isRecords: boolean[] = []
  let at = afterSpace(text, text.startsWith(BYTE_ORDER_MARK) ? 1 : 0)

  /** Takes a name and its colon, up to where its value begins. */
  const takeName = (): JsonFault | undefined => {
    const end = text[at] === '"' ? stringEnd(text, at) : undefined
    if (end === undefined) return malformed(at, 'a name in quotes should stand here')
    if (end < 0) return brokenString(text, ~end)
    const refused = events.name(text.slice(at, end), at)
    if (refused) return { ...refused, at }
    const colon = afterSpace(text, end)
    if (text[colon] !== ':') return malformed(colon, 'a colon should stand here')
    at = afterSpace(text, colon + 1)
    return undefined
  }

  /** Takes a string, number or word, or the opening of a record or list. */
  const takeValue = (): JsonFault | undefined => {
    if (text[at] !== '{' && text[at] !== '[') {
      const end = scalarEnd(text, at, takesNonFinite)
      if (end < 0 && text[at] === '"') return brokenString(text, ~end)
      if (end < 0) return malformed(at, 'a value should stand here')
      const refused = events.scalar(text.slice(at, end), at)
      if (refused) return { ...refused, at }
      at = end
      return undefined
    }
    if (isRecords.length >= deepest)
      return {
        code: 'too-large',
        at,
        says: `records and lists stand more than ${deepest} deep in one another`,
      }
    const refused = events.open(text[at] === '{', at)
    if (refused) return { ...refused, at }
    isRecords.push(text[at] === '{')
    at = afterSpace(text, at + 1)
    return undefined
  }

  for (let isFirst = true; ; isFirst = false) {
    const depth = isRecords.length
    const isRecord = isRecords[depth - 1]
    if (depth === 0 && !isFirst)
      return at === text.length ? undefined : malformed(at, 'nothing more should stand here')
    const fault = (isRecord ? takeName() : undefined) ?? takeValue()
    if (fault) return fault
    let isOpened = isRecords.length > depth
    for (;;) {
      at = afterSpace(text, at)
      const inside = isRecords.at(-1)
      if (inside === undefined) break
      if (text[at] === (inside ? '}' : ']')) {
        events.close()
        isRecords.pop()
        at++
        isOpened = false
        continue
      }
      if (isOpened) break
      if (text[at] !== ',')
        return malformed(at, `a comma or ${inside ? '“}”' : '“]”'} should stand here`)
      at = afterSpace(text, at + 1)
      break
    }
  }
}
