import type { Cue } from '../job/job.ts'

/** How much of something does not get through: none of it, or none that others apply, or a part. */
export type LossExtent = 'left out' | 'kept, not applied' | 'rounded' | 'in part'

/** What the program did about a loss: how much is lost, and one sentence. */
export type LossDone = { readonly extent: LossExtent; readonly done: string }

/** Something of a job that a format cannot carry. */
export type Loss = LossDone & {
  /** In a word or two, such as `Framing`. */
  readonly subject: string
  /** Numbers, from 1, of the cues it concerns; none where it concerns the whole reel. */
  readonly cues: readonly number[]
  /** One sentence: what is not carried. */
  readonly says: string
}

export const leftOut = (done: string): LossDone => ({ extent: 'left out', done })
export const keptUnapplied = (done: string): LossDone => ({ extent: 'kept, not applied', done })
export const rounded = (done: string): LossDone => ({ extent: 'rounded', done })
export const inPart = (done: string): LossDone => ({ extent: 'in part', done })

const SHOWN = 12

/** Cue numbers in words: `cue 4`, `cues 2, 5 and 9`, or a count where there are many. */
export const cueWords = (numbers: readonly number[]): string => {
  if (numbers.length === 1) return `cue ${numbers[0]}`
  if (numbers.length > SHOWN) return `${numbers.length} cues`
  return `cues ${numbers.slice(0, -1).join(', ')} and ${numbers.at(-1)}`
}

/** The numbers of the cues for which something holds. */
export const numbersWhere = (
  cues: readonly Cue[],
  holds: (cue: Cue) => boolean,
): readonly number[] => cues.flatMap((cue, index) => (holds(cue) ? [index + 1] : []))

/** A loss of these cues; none where there are none. `says` gets them in words. */
export const cueLoss = (
  subject: string,
  cues: readonly number[],
  says: (words: string) => string,
  done: LossDone,
): readonly Loss[] =>
  cues.length === 0 ? [] : [{ subject, cues, says: says(cueWords(cues)), ...done }]

/** A loss of the whole reel, where there is one. */
export const wholeLoss = (
  isLost: boolean,
  subject: string,
  says: string,
  done: LossDone,
): readonly Loss[] => (isLost ? [{ subject, cues: [], says, ...done }] : [])
