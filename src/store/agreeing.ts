import type { Mark } from '../core/agreement/answer.ts'
import type { AnswerPlan } from '../core/agreement/planAnswers.ts'
import type { SignatureStanding } from '../core/agreement/signatureStands.ts'
import type { CueId } from '../core/job/recordIds.ts'
import type { AppStore } from './appStore.ts'

/** Answers that were read and wait to be taken into the job. */
export type TakenIn = {
  readonly plan: AnswerPlan
  /** How each of its rows is signed, in their order. */
  readonly signatures: readonly SignatureStanding[]
  /** Whose word holds, by cue, where reviewers are not of one mind. */
  readonly choices: ReadonlyMap<CueId, string>
}

/** Lines that are drawn on the picture for an answer not given yet. */
export type Drawing = {
  readonly marks: readonly Mark[]
  readonly frame: number
  /** Whether the pointer draws. */
  readonly isOpen: boolean
}

/** What a review pack holds, which makes its size. */
export type PackShape = {
  readonly cues: readonly CueId[]
  /** Seconds of each cue in motion, at most; 0 for none. */
  readonly clipSeconds: number
  /** Whether full-size stills go beside the page, in a .zip. */
  readonly hasStills: boolean
}

/** The agreement of the reel on screen while it is asked for. */
export type Agreeing = {
  /** The name things are said in at this screen. */
  readonly by: string
  readonly drawing: Drawing | undefined
  /** A review pack on its way: cues done, of all. */
  readonly making: { readonly done: number; readonly total: number } | undefined
  /** About how large a pack of that shape would be, in bytes. */
  readonly estimate: { readonly bytes: number; readonly of: PackShape } | undefined
  readonly takenIn: TakenIn | undefined
}

export const INITIAL_AGREEING: Agreeing = {
  by: '',
  drawing: undefined,
  making: undefined,
  estimate: undefined,
  takenIn: undefined,
}

export const setAgreeing = (store: AppStore, change: Partial<Agreeing>): void =>
  store.setState(({ agreeing }) => ({ agreeing: { ...agreeing, ...change } }))
