import type { Foreign } from '../../job/job.ts'
import { REEL_FOREIGN_LIMIT } from '../../job/limits.ts'
import { type Rate, rate } from '../../time/rate.ts'
import { beginsWith, commentKind } from './edlComment.ts'
import type { EdlListForeign } from './edlForeign.ts'
import type { EdlProblems } from './edlProblems.ts'

/** What stands above the first event of a list. */
export type EdlHeader = {
  title: string
  /** The title of the list that a list of ours was made from; '' where it says none. */
  earlierTitle: string
  /** Whether it states its rate, as our own lists do: its title is then that of the job. */
  isOwn: boolean
  readonly comments: string[]
  readonly notTaken: string[]
}

export const newEdlHeader = (): EdlHeader => ({
  title: '',
  earlierTitle: '',
  isOwn: false,
  comments: [],
  notTaken: [],
})

/** The words comments above the first event begin with in our own lists. */
export const HEADER_WORDS = { rate: 'FRAME RATE:', earlier: 'FROM LIST:' } as const

const LARGEST_TERM = 1_000_000

/** The rate a list of ours states in a comment above the first event. */
export const statedRate = (said: string): Rate | undefined => {
  if (!beginsWith(said, HEADER_WORDS.rate)) return undefined
  const [, num, den] = /:\s*(\d{1,7})(?:\/(\d{1,7}))?$/u.exec(said) ?? []
  const terms = [Number(num), Number(den ?? 1)] as const
  return terms.every((term) => term >= 1 && term <= LARGEST_TERM) ? rate(...terms) : undefined
}

/** Takes a comment above the first event. */
export const takeHeaderComment = (
  header: EdlHeader,
  said: string,
  line: number,
  notTaken: EdlProblems,
): void => {
  if (header.earlierTitle === '' && beginsWith(said, HEADER_WORDS.earlier)) {
    header.earlierTitle = said.slice(HEADER_WORDS.earlier.length).trim()
    return
  }
  if (statedRate(said)) {
    header.isOwn = true
    return
  }
  if (commentKind(said) === undefined) {
    header.comments.push(said)
    return
  }
  notTaken.add('malformed', 'This comment is above the first event and belongs to none.', line)
  header.notTaken.push(said)
}

/** What of it a reel has no field for. */
export const foreignOfHeader = (
  { title, earlierTitle, isOwn, comments, notTaken }: EdlHeader,
  problems: EdlProblems,
): Foreign => {
  const said = isOwn ? earlierTitle : earlierTitle || title
  const kept: EdlListForeign = {
    ...(said ? { title: said } : {}),
    ...(comments.length > 0 ? { comments } : {}),
    ...(notTaken.length > 0 ? { notTaken } : {}),
  }
  const text = JSON.stringify(kept)
  if (text === '{}') return []
  if (text.length <= REEL_FOREIGN_LIMIT) return [{ format: 'edl', text }]
  problems.add('too-large', 'The comments above the first event are too many and were left.', 1)
  return []
}
