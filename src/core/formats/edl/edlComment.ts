import type { EdlDraft } from './edlDraft.ts'
import { readSat, readSop } from './edlNumbers.ts'
import type { EdlProblems } from './edlProblems.ts'

/** The words comments of values begin with. The first five are customary, the rest ours. */
export const COMMENT_WORDS = {
  fromClip: 'FROM CLIP NAME:',
  toClip: 'TO CLIP NAME:',
  sop: 'ASC_SOP',
  saturation: 'ASC_SAT',
  pointer: 'ASC_CC_XML',
  ramp: 'RAMP ',
  note: 'NOTE:',
  noteContinued: 'NOTE CONTINUED:',
  noteJoined: 'NOTE JOINED:',
  reelName: 'FULL REEL NAME:',
  earlier: 'FROM EVENT:',
} as const

type CommentKind = keyof typeof COMMENT_WORDS

const KINDS = Object.entries(COMMENT_WORDS) as readonly (readonly [CommentKind, string])[]

const SOURCE_FILE = 'SOURCE FILE:'
const RAMP = /^RAMP (\d{1,5}) FRAMES( EASED)?$/iu
const MOST_RAMP = 10_000

/** Whether a text begins with a word of capitals, however it is spelt itself. */
export const beginsWith = (text: string, word: string): boolean => {
  if (text.length < word.length) return false
  for (let i = 0; i < word.length; i++) {
    const code = text.charCodeAt(i)
    if ((code >= 97 && code <= 122 ? code - 32 : code) !== word.charCodeAt(i)) return false
  }
  return true
}

/** What a comment is about; undefined for one that is kept as it is. */
export const commentKind = (text: string): CommentKind | undefined => {
  for (const [kind, word] of KINDS)
    if (beginsWith(text, word) && (kind !== 'ramp' || RAMP.test(text))) return kind
  return undefined
}

/** Where what a comment says begins: after its word, a colon and blanks. */
const afterWord = (text: string, kind: CommentKind): number => {
  let at = COMMENT_WORDS[kind].length
  while (text[at] === ' ' || text[at] === '\t') at++
  if (text[at] === ':' && (kind === 'sop' || kind === 'saturation')) at++
  return at
}

/** Keeps a comment with its event. */
export const keep = (
  draft: EdlDraft,
  where: 'comments' | 'notTaken' | 'earlier',
  text: string,
): void => {
  const kept = draft[where]
  if (kept) kept.push(text)
  else draft[where] = [text]
}

/** Takes the value of a comment; what is wrong with it, as a sentence, where it cannot be taken. */
const takeValue = (
  draft: EdlDraft,
  kind: CommentKind,
  text: string,
  line: number,
): string | undefined => {
  const at = afterWord(text, kind)
  switch (kind) {
    case 'fromClip':
    case 'toClip':
    case 'reelName':
      if (draft[kind] === '') draft[kind] = text.slice(at)
      else keep(draft, 'comments', text)
      return undefined
    case 'sop': {
      if (draft.sop) return 'The event has an ASC_SOP already; this second one was left.'
      draft.sop = readSop(text, at)
      if (!draft.sop)
        return 'ASC_SOP needs three groups of three decimals in parentheses; it was left.'
      draft.gradeLine ||= line
      return undefined
    }
    case 'saturation': {
      if (draft.saturation !== undefined)
        return 'The event has an ASC_SAT already; this second one was left.'
      draft.saturation = readSat(text, at)
      if (draft.saturation === undefined) return 'ASC_SAT needs one decimal; it was left.'
      draft.gradeLine ||= line
      return undefined
    }
    case 'pointer':
      return 'ASC_CC_XML points to a correction in another file; open that file as well.'
    case 'ramp': {
      const [, frames, eased] = RAMP.exec(text) ?? []
      if (Number(frames) > MOST_RAMP)
        return `A ramp has at most 10,000 frames; this one of ${Number(frames)} was left.`
      if (draft.ramp !== undefined) return 'The event has a RAMP already; this second one was left.'
      draft.ramp = Number(frames)
      draft.rampShape = eased === undefined ? 'linear' : 'eased'
      return undefined
    }
    case 'note':
      draft.note = draft.note === undefined ? text.slice(at) : `${draft.note}\n${text.slice(at)}`
      return undefined
    case 'noteContinued':
      draft.note = draft.note === undefined ? text.slice(at) : `${draft.note} ${text.slice(at)}`
      return undefined
    case 'noteJoined':
      draft.note = `${draft.note ?? ''}${text.slice(at)}`
      return undefined
    case 'earlier':
      keep(draft, 'earlier', text.slice(at))
      return undefined
  }
}

/** Takes a comment (without its asterisk and blanks around it) for what it says of its event. */
export const takeComment = (
  draft: EdlDraft,
  text: string,
  line: number,
  notTaken: EdlProblems,
): void => {
  const kind = commentKind(text)
  if (kind === undefined) {
    if (draft.sourceFile === '' && beginsWith(text, SOURCE_FILE))
      draft.sourceFile = text.slice(SOURCE_FILE.length).trim()
    keep(draft, 'comments', text)
    return
  }
  const wrong = takeValue(draft, kind, text, line)
  if (wrong === undefined) return
  keep(draft, 'notTaken', text)
  notTaken.add('malformed', wrong, line)
}
