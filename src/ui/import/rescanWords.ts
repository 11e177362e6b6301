import type { ReconformOutcome, ReconformRow } from '../../core/conform/reconformPlan.ts'
import type { OutcomeWords } from './importWords.ts'

/** What becomes of cues on another scan, as a shape and a word. */
export const RECONFORM_WORDS: Readonly<Record<ReconformOutcome, OutcomeWords>> = {
  follows: { sign: '→', word: 'follows', many: 'follow' },
  doubtful: { sign: '?', word: 'doubtful', many: 'doubtful' },
  lost: { sign: '▲', word: 'lost', many: 'lost' },
}

/** By how many frames a cue moves; '' where it stays or is lost. */
export const movedText = ({ cue, first }: ReconformRow): string => {
  const by = first === undefined ? 0 : first - cue.first
  if (by === 0) return ''
  return `${Math.abs(by)} ${Math.abs(by) === 1 ? 'frame' : 'frames'} ${by < 0 ? 'earlier' : 'later'}`
}

/** How sure a place is, as a part of a hundred. */
export const sureText = ({ outcome, sure }: ReconformRow): string =>
  outcome === 'lost' ? '–' : `${Math.round(100 * sure)} %`
