import type { ImportOutcome, ImportRow } from '../../core/conform/importPlan.ts'
import type { DecisionList, ReadFormat, Span } from '../../core/formats/decisionList.ts'
import type { Reel } from '../../core/job/job.ts'
import type { Frame } from '../../core/time/frame.ts'
import { framesPerSecond, sameRate } from '../../core/time/rate.ts'
import { formatTimecode } from '../../core/time/timecode.ts'
import { formatNumber } from '../parts/numberText.ts'

/** What a list is called. */
const KINDS: Readonly<Record<ReadFormat, string>> = {
  cdl: 'ASC CDL',
  edl: 'edit decision list',
  otio: 'OpenTimelineIO timeline',
  csv: 'ledger as CSV',
}

export type OutcomeWords = {
  /** A shape that tells it without colour. */
  readonly sign: string
  /** Of one decision, and of many. */
  readonly word: string
  readonly many: string
}

/** What becomes of decisions, as a shape and a word. */
export const OUTCOME_WORDS: Readonly<Record<ImportOutcome, OutcomeWords>> = {
  matches: { sign: '=', word: 'matches', many: 'match' },
  moves: { sign: '→', word: 'moves', many: 'move' },
  begins: { sign: '+', word: 'begins', many: 'begin' },
  conflicts: { sign: '▲', word: 'conflicts', many: 'conflict' },
  'passed-over': { sign: '·', word: 'passed over', many: 'passed over' },
}

/** `1 decision`, `2 decisions`. */
export const counted = (count: number, one: string, many = `${one}s`): string =>
  `${count} ${count === 1 ? one : many}`

const rateText = (fps: number): string =>
  Number.isInteger(fps) ? String(fps) : formatNumber(fps, 3)

/** What a list is and how much of it there is, in a line. */
export const listText = ({ format, title, decisions, rate }: DecisionList): string =>
  [
    KINDS[format],
    ...(title === '' ? [] : [`“${title}”`]),
    counted(decisions.length, 'decision'),
    ...(rate ? [`${rateText(framesPerSecond(rate))} frames/s`] : []),
  ].join(' · ')

/** A place on the reel as its timecode. */
export const placeText = ({ startCount, rate, isDropFrame }: Reel, at: Frame): string =>
  formatTimecode(startCount + at, rate, isDropFrame)

/** A count of the list as the label it stands for: at the list's own rate where it has one. */
const labelText = (count: number, list: DecisionList, reel: Reel): string => {
  const rate = list.rate ?? reel.rate
  const drops = list.isDropFrame ?? (reel.isDropFrame && sameRate(rate, reel.rate))
  return formatTimecode(count, rate, drops)
}

export type SpanText = { readonly from: string; readonly to: string }

/** Where a decision begins and ends by the list's own labels; undefined where it has no times. */
export const spanText = (
  span: Span | undefined,
  list: DecisionList,
  reel: Reel,
): SpanText | undefined =>
  span && { from: labelText(span.from, list, reel), to: labelText(span.to, list, reel) }

/** Where the cue of a row is and goes: `10:00:04:02 → 10:00:04:05` where it moves. */
export const rowPlaceText = ({ outcome, cue, first }: ImportRow, reel: Reel): string => {
  if (first === undefined) return cue ? placeText(reel, cue.first) : ''
  if (outcome === 'moves' && cue) return `${placeText(reel, cue.first)} → ${placeText(reel, first)}`
  return placeText(reel, first)
}

/** What a row would change, in words; '' where nothing is done with its decision. */
export const changesText = ({ outcome, changes }: ImportRow): string => {
  if (outcome === 'conflicts' || outcome === 'passed-over') return ''
  return (
    changes.map((change) => (change === 'name' ? 'grade name' : change)).join(', ') ||
    'nothing changes'
  )
}
