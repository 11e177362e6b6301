import { NOTE_LIMIT } from '../../job/commands/setNote.ts'
import type { Job, Reel } from '../../job/job.ts'
import { formatTimecode } from '../../time/timecode.ts'
import type { CdlWord } from './cdlWords.ts'

/** What we write of a correction ourselves, so that it can be told from what others wrote. */

const OWN_CUE = /^Cue (\d+), in at (\d\d:\d\d:\d\d[:;]\d{2,3})$/u

const OWN_ENDING = "Values apply to non-linear R'G'B' without clamping."

/** The description that we begin a correction with. */
export const ownCueText = (reel: Reel, first: number, number: number): string =>
  `Cue ${number}, in at ${formatTimecode(reel.startCount + first, reel.rate, reel.isDropFrame)}`

/** The description that we begin a list with. */
export const ownListText = (job: Job, reel: Reel): string =>
  `${job.info.job.title}, reel ${reel.name}${SCAN_WORDS}${reel.media.name}. ${OWN_ENDING}`

const SCAN_WORDS = ', scan '

/** The scan that a description of ours names: what stands between these words and its full stop. */
const scanIn = (text: string): string | undefined => {
  const said = text.slice(0, -OWN_ENDING.length)
  const at = said.indexOf(SCAN_WORDS)
  if (at < 0 || !said.endsWith('. ')) return undefined
  return said.slice(at + SCAN_WORDS.length, -'. '.length)
}

/** The scan that the description of a list of ours names; undefined where no list of ours does. */
export const ownScanOf = (words: readonly CdlWord[]): string | undefined =>
  words
    .filter(({ text }) => text.endsWith(OWN_ENDING))
    .map(({ text }) => scanIn(text))
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

/** The number of the cue, where it begins, its note, and what others wrote. */
export type OwnWords = {
  readonly number: number
  /** The timecode label of its first frame. */
  readonly label: string
  readonly note: string
  readonly rest: readonly CdlWord[]
}

/** The descriptions of a correction that we wrote, taken apart; undefined where it is not ours. */
export const ownWordsOf = (words: readonly CdlWord[]): OwnWords | undefined => {
  const [cue, note, ...rest] = words
  const said = cue?.name === 'Description' ? OWN_CUE.exec(cue.text) : null
  if (!said) return undefined
  const [, number, label = ''] = said
  if (!note) return { number: Number(number), label, note: '', rest: [] }
  const isNote = note.name === 'Description' && note.text.length <= NOTE_LIMIT
  return {
    number: Number(number),
    label,
    note: isNote ? note.text : '',
    rest: isNote ? rest : [note, ...rest],
  }
}

/** The descriptions of a list without the one that we begin it with. */
export const withoutOwnText = (words: readonly CdlWord[]): readonly CdlWord[] =>
  words.filter(({ name, text }) => name !== 'Description' || !text.endsWith(OWN_ENDING))
