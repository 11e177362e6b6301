import type { Answer } from '../../core/agreement/answer.ts'
import type { SignatureStanding } from '../../core/agreement/signatureStands.ts'

const SAYS = { agreed: '✓ agreed', asked: '✎ asked for changes', open: '○ took it back' } as const

/** Who said it, what, and when, in a line. */
export const answerWords = ({ says, by, at, alternate }: Answer): string =>
  [
    `${by === '' ? 'At this job' : by} ${SAYS[says]}`,
    ...(alternate === null ? [] : [`with the grade “${alternate}”`]),
    at === null ? 'time not kept' : new Date(at).toLocaleString('en-GB', SHORT),
  ].join(' · ')

const SHORT = { dateStyle: 'medium', timeStyle: 'short' } as const

export const SIGNATURE_WORDS: Readonly<Record<SignatureStanding, string>> = {
  right: 'signed by the pack',
  wrong: '▲ the signature is wrong: the answer was changed after it was given',
  'not signed': 'not signed',
  'cannot be checked': 'its signature cannot be checked here',
}
