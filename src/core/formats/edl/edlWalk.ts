import { type CountingMode, type EdlEvent, readEdlEvent } from './edlEvent.ts'

/** What is done with the lines of a list. */
export type EdlVisitor = {
  /** An event line; where it is broken, what is wrong with it, as a sentence. */
  readonly takeEvent: (event: EdlEvent | string, line: number) => void
  /** Where in the text a comment is, without its asterisk and blanks around it. */
  readonly takeComment: (from: number, to: number, line: number) => void
  /** Any other line but FCM lines, without blanks around it. */
  readonly takeWords?: (said: string, line: number) => void
}

const ASTERISK = 42
const LETTERS_F = [70, 102]

const isDigit = (code: number): boolean => code >= 48 && code <= 57

const isBlank = (code: number): boolean =>
  code === 32 || (code >= 9 && code <= 13) || code === 0xfeff

const beginsWithNumber = (text: string, from: number, to: number): boolean => {
  for (let i = from; i < to; i++) {
    const code = text.charCodeAt(i)
    if (isBlank(code)) return true
    if (!isDigit(code)) return false
  }
  return true
}

const MODE = /^FCM[ \t]*:?[ \t]*(NON[-_ \t]*DROP|NDF|DROP|DF)([-_ \t]*FRAME)?$/iu

/** Longer lines are not tried: the blanks in them would take long to try. */
const LONGEST_MODE = 80

const statedMode = (said: string): CountingMode | undefined => {
  if (said.length > LONGEST_MODE) return undefined
  const stated = MODE.exec(said)?.[1]
  if (stated === undefined) return undefined
  return stated.startsWith('N') || stated.startsWith('n') ? 'non-drop' : 'drop'
}

/** A text whose lines end in CR alone, all or some, with LF in their place. */
export const withLineFeeds = (text: string): string =>
  /\r[^\r\n]/u.test(text)
    ? text.replace(/\r+\n?/gu, (run) => (run.endsWith('\n') ? '\n' : '\n'.repeat(run.length)))
    : text

/**
 * Goes through the lines of a list, which end in LF or CR LF. A line whose first word is a number
 * is an event.
 */
export const walkEdl = (text: string, visitor: EdlVisitor): void => {
  const { takeEvent, takeComment, takeWords } = visitor
  let mode: CountingMode | undefined
  let line = 1
  for (let begin = 0; begin < text.length; line++) {
    const found = text.indexOf('\n', begin)
    const next = found < 0 ? text.length : found
    let from = begin
    let to = next
    begin = next + 1
    while (from < to && isBlank(text.charCodeAt(from))) from++
    while (to > from && isBlank(text.charCodeAt(to - 1))) to--
    if (from === to) continue
    const first = text.charCodeAt(from)
    if (first === ASTERISK) {
      from++
      while (from < to && isBlank(text.charCodeAt(from))) from++
      if (from < to) takeComment(from, to, line)
      continue
    }
    if (isDigit(first) && beginsWithNumber(text, from, to)) {
      takeEvent(readEdlEvent(text, from, to, line, mode), line)
      continue
    }
    const stated = LETTERS_F.includes(first) ? statedMode(text.slice(from, to)) : undefined
    if (stated) mode = stated
    else takeWords?.(text.slice(from, to), line)
  }
}
