const MARK = /<!--|<!\[CDATA\[|<\?|&/gu

/** An entity's name or a character's number (XML 1.0 §4.1), from `lastIndex`. */
const REFERENCE = /&(?:#\d+|#x[\da-fA-F]+|[\p{L}_:][\p{L}\p{M}\p{Nd}:._-]*);/uy

const ENDS: Readonly<Record<string, string>> = { '<!--': '-->', '<![CDATA[': ']]>', '<?': '?>' }

/**
 * Where the first `&` of an XML text before `before` stands that begins no reference; undefined
 * where there is none. Those in comments, CDATA and processing instructions are passed over.
 */
export const findBareAmpersand = (text: string, before: number): number | undefined => {
  MARK.lastIndex = 0
  for (let found = MARK.exec(text); found && found.index < before; found = MARK.exec(text)) {
    const [mark] = found
    const ending = ENDS[mark]
    if (ending !== undefined) {
      const end = text.indexOf(ending, found.index + mark.length)
      if (end < 0) return undefined
      MARK.lastIndex = end + ending.length
      continue
    }
    REFERENCE.lastIndex = found.index
    if (!REFERENCE.test(text)) return found.index
    MARK.lastIndex = REFERENCE.lastIndex
  }
  return undefined
}
