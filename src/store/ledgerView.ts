/** Which cues the ledger lists. */
export type CueFilter =
  | 'all'
  | 'not-agreed'
  | 'outside'
  | 'not-looked-at'
  | 'doubtful'
  | 'changed-since'

export const CUE_FILTERS: readonly CueFilter[] = [
  'all',
  'not-agreed',
  'outside',
  'not-looked-at',
  'doubtful',
  'changed-since',
]

export type LedgerView = {
  /** 'even': every cue takes one row. 'true': cues are as long as their shots. */
  readonly timing: 'even' | 'true'
  /** CSS pixels to a second of the reel where timing is true. */
  readonly pixelsPerSecond: number
  readonly filter: CueFilter
}

export const INITIAL_LEDGER: LedgerView = { timing: 'even', pixelsPerSecond: 20, filter: 'all' }

/** Scales of the strip in CSS pixels a second: from a reel at a glance to frame by frame. */
export const STRIP_SCALES: readonly number[] = [
  1, 2, 3, 5, 8, 12, 20, 32, 50, 80, 120, 200, 320, 500, 800, 1200,
]

/** The next longer (1) or shorter (−1) scale of the strip; undefined at either end. */
export const nextScale = (
  { pixelsPerSecond }: LedgerView,
  direction: 1 | -1,
): number | undefined =>
  direction > 0
    ? STRIP_SCALES.find((scale) => scale > pixelsPerSecond)
    : STRIP_SCALES.findLast((scale) => scale < pixelsPerSecond)
