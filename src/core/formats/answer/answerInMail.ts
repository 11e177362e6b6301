const FORMAT = '"reelwright-answer"'

/** Where the record that begins at `start` ends: after its last brace. */
const recordEnd = (text: string, start: number): number | undefined => {
  let depth = 0
  let isInString = false
  for (let at = start; at < text.length; at++) {
    const letter = text[at]
    if (isInString) {
      if (letter === '\\') at++
      else if (letter === '"') isInString = false
    } else if (letter === '"') isInString = true
    else if (letter === '{') depth++
    else if (letter === '}' && --depth === 0) return at + 1
  }
  return undefined
}

/** So many braces of a mail are looked at before its answer, so that no text takes long. */
const MOST_TRIES = 100

/** The record that has the format's name in it, wherever its names stand. */
const recordIn = (text: string): string | undefined => {
  const named = text.indexOf(FORMAT)
  const opening = /\{\s*"/gu
  for (let tries = 0; tries < MOST_TRIES; tries++) {
    const start = opening.exec(text)?.index
    if (start === undefined || start > named) return undefined
    const end = recordEnd(text, start)
    if (end !== undefined && end > named) return text.slice(start, end)
    opening.lastIndex = end ?? start + 1
  }
  return undefined
}

/**
 * The record that an answer is, in a text that came by mail: without the words before and after it
 * and without marks of quoting, which no line of JSON begins with. Undefined where none is whole.
 */
export const answerInMail = (mail: string): string | undefined =>
  recordIn(mail.replace(/^[ \t]*(?:[>|][ \t]?)+/gmu, ''))
