import type { Problem } from '../base/problem.ts'
import type { Decision, ReadFormat } from '../formats/decisionList.ts'
import type { Cue, Foreign } from '../job/job.ts'
import type { Frame } from '../time/frame.ts'

/**
 * How decisions of a list find their place on a reel: by their times; by the name of their source
 * (only those of this reel, by source time) or of a cue; or one after another.
 */
export type MatchBy = 'timecode' | 'name' | 'order'

/** What is asked of an import. */
export type ImportOptions = {
  readonly matchBy: MatchBy
  /** Which of a decision's times count. */
  readonly times: 'record' | 'source'
  /** The frame of the reel where the list's first decision begins; null: where its times say. */
  readonly startsAt: Frame | null
  readonly takesPlaces: boolean
  readonly takesGrades: boolean
}

/**
 * What becomes of a decision: a cue begins on its frame already (`matches`), begins elsewhere and
 * moves there (`moves`), is made for it (`begins`), cannot be (`conflicts`), or nothing is done
 * with it (`passed-over`).
 */
export type ImportOutcome = 'matches' | 'moves' | 'begins' | 'conflicts' | 'passed-over'

/** What of a cue an import changes; a cue that begins has the values of the one before it. */
export type ImportedChange =
  | 'place'
  | 'grade'
  | 'framing'
  | 'ramp'
  | 'scene'
  | 'note'
  | 'alternates'
  | 'name'
  | 'shot change'
  | 'kept words'

export type ImportRow = {
  /** The decision's place in its list, from 1. */
  readonly number: number
  readonly decision: Decision
  readonly outcome: ImportOutcome
  /** The cue it is about; undefined where there is none yet. */
  readonly cue: Cue | undefined
  /** Where on the reel it begins; undefined where nothing tells. */
  readonly first: Frame | undefined
  /** One sentence where it needs one: why it conflicts or is passed over; else ''. */
  readonly says: string
  /** What it would change; empty where nothing is done with it, or the cue has it all already. */
  readonly changes: readonly ImportedChange[]
}

/** What an import would do, decision by decision. */
export type ImportPlan = {
  readonly format: ReadFormat
  readonly options: ImportOptions
  readonly rows: readonly ImportRow[]
  /** Numbers, from 1, of the reel's cues that no decision is about. */
  readonly untouched: readonly number[]
  /** What of the list cannot be taken, whatever is chosen. */
  readonly notTaken: readonly Problem[]
  /** What the list says as a whole, kept with the reel once anything is taken. */
  readonly foreign: Foreign
}
