import { NOTE_LIMIT } from '../../job/commands/setNote.ts'
import type { Job, Reel } from '../../job/job.ts'
import { formatTimecode } from '../../time/timecode.ts'
import type { CdlWord } from './cdlWords.ts'

/** What we write of a correction ourselves, so that it can be told from what others wrote. */

const OWN_CUE = /^Cue (\d+), in at \d\d:\d\d:\d\d[:;]\d{2,3}$/u

const OWN_ENDING = "Values apply to non-linear R'G'B' without clamping."

/** The description that we begin a correction with. */
export const ownCueText = (reel: Reel, first: number, number: number): string =>
  `Cue ${number}, in at ${formatTimecode(reel.startCount + first, reel.rate, reel.isDropFrame)}`

/** The description that we begin a list with. */
export const ownListText = (job: Job, reel: Reel): string =>
  `${job.info.job.title}, reel ${reel.name}, scan ${reel.media.name}. ${OWN_ENDING}`

/** The scan that the description of a list of ours names; undefined where no list of ours does. */
export const ownScanOf = (words: readonly CdlWord[]): string | undefined =>
  words
    .filter(({ text }) => text.endsWith(OWN_ENDING))
    .map(({ text }) => /, scan (.*)\. $/su.exec(text.slice(0, -OWN_ENDING.length))?.[1])
    .find((scan) => scan !== undefined)

/** A correction's own descriptions; an empty note holds its place before words that follow. */
export const withOwnWords = (
  cueText: string,
  note: string,
  kept: readonly CdlWord[],
): readonly CdlWord[] => [
  { name: 'Description', text: cueText },
  ...(note === '' && kept.length === 0 ? [] : [{ name: 'Description', text: note } as const]),
  ...kept,
]

/** The number of the cue, its note, and what others wrote. */
export type OwnWords = {
  readonly number: number
  readonly note: string
  readonly rest: readonly CdlWord[]
}

/** The descriptions of a correction that we wrote, taken apart; undefined where it is not ours. */
export const ownWordsOf = (words: readonly CdlWord[]): OwnWords | undefined => {
  const [cue, note, ...rest] = words
  const number = cue?.name === 'Description' ? OWN_CUE.exec(cue.text)?.[1] : undefined
  if (number === undefined) return undefined
  if (!note) return { number: Number(number), note: '', rest: [] }
  const isNote = note.name === 'Description' && note.text.length <= NOTE_LIMIT
  return {
    number: Number(number),
    note: isNote ? note.text : '',
    rest: isNote ? rest : [note, ...rest],
  }
}

/** The descriptions of a list without the one that we begin it with. */
export const withoutOwnText = (words: readonly CdlWord[]): readonly CdlWord[] =>
  words.filter(({ name, text }) => name !== 'Description' || !text.endsWith(OWN_ENDING))
