import type { GivenAnswer } from '../job/commands/addAnswers.ts'
import type { PackId, ReelId } from '../job/recordIds.ts'

/** What a review pack saves when a reviewer is done. */
export type AnswerFile = {
  readonly format: 'reelwright-answer'
  readonly version: 1
  readonly pack: PackId
  /** The job's title and the reel, as the pack had them. */
  readonly title: string
  readonly reel: { readonly id: ReelId; readonly name: string }
  /** One an answered cue; each names the reviewer, the pack and the pictures it is about. */
  readonly answers: readonly GivenAnswer[]
}
