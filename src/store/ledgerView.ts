/** Which cues the ledger lists. */
export type CueFilter =
  | 'all'
  | 'not-agreed'
  | 'outside'
  | 'not-looked-at'
  | 'doubtful'
  | 'changed-since'

export type LedgerView = {
  /** 'even': every cue takes one row. 'true': cues are as long as their shots. */
  readonly timing: 'even' | 'true'
  /** CSS pixels to a second of the reel where timing is true. */
  readonly pixelsPerSecond: number
  readonly filter: CueFilter
}

export const INITIAL_LEDGER: LedgerView = { timing: 'even', pixelsPerSecond: 20, filter: 'all' }
