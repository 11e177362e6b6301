import { COMMENT_WORDS } from './edlComment.ts'
import { edlLinesOf, LINE_LIMIT } from './edlText.ts'

const wrapped = (text: string): readonly string[] => {
  const lines: string[] = []
  let word: string = COMMENT_WORDS.note
  let rest = text
  for (;;) {
    const before = `* ${word} `
    const room = LINE_LIMIT - before.length
    if (rest.length <= room) return [...lines, `${before}${rest}`.trimEnd()]
    const blank = rest.lastIndexOf(' ', room)
    lines.push(before + rest.slice(0, blank > 0 ? blank : room))
    rest = rest.slice(blank > 0 ? blank + 1 : room)
    word = blank > 0 ? COMMENT_WORDS.noteContinued : COMMENT_WORDS.noteJoined
  }
}

/**
 * A note as comments: `NOTE:` begins each of its lines, `NOTE CONTINUED:` what follows after a
 * blank, and `NOTE JOINED:` what follows at once. The word before it keeps a note such as
 * `ASC_SAT 2` from being taken for a grade.
 */
export const edlNoteLines = (note: string): readonly string[] => {
  const text = edlLinesOf(note)
  return text === '' ? [] : text.split('\n').flatMap(wrapped)
}
