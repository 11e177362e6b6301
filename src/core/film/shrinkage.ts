import type { Gauge } from '../time/footage.ts'
import type { FactStanding } from './soundOffset.ts'

/** Length from one perforation to the next of film as it was made, in mm. */
export type PerforationPitch = {
  readonly name: string
  readonly mm: number
  readonly standing: FactStanding
}

const pitch = (name: string, mm: number, standing: FactStanding): PerforationPitch => ({
  name,
  mm,
  standing,
})

const LONG_35 = pitch('35 mm long (.1870 in)', 4.75, 'from memory')
const LONG_16 = pitch('16 mm long (.3000 in)', 7.62, 'verified')
const SHORT_16 = pitch('16 mm short (.2994 in)', 7.605, 'verified')
const SHORT_35 = pitch('35 mm short (.1866 in)', 4.74, 'from memory')

/**
 * Pitches a gauge was perforated with, prints first. 16 mm by a standard's text (facts/film.md F5),
 * others from memory. A short-pitch negative measured as a long one seems 0.21 % shrunk.
 */
export const PITCHES: Readonly<Partial<Record<Gauge, readonly PerforationPitch[]>>> = {
  '35mm-4perf': [LONG_35, SHORT_35],
  '35mm-3perf': [LONG_35, SHORT_35],
  '35mm-2perf': [LONG_35, SHORT_35],
  '16mm': [LONG_16, SHORT_16],
  super16: [LONG_16, SHORT_16],
  super8: [pitch('Super 8 (.1667 in)', 4.234, 'from memory')],
  standard8: [pitch('Standard 8 (.1500 in)', 3.81, 'from memory')],
}

/** Part by which film has shrunk: measured mm of `count` pitches against what they were made with. */
export const shrinkage = (measuredMm: number, count: number, pitchMm: number): number =>
  1 - measuredMm / (count * pitchMm)

/**
 * What shrinkage means for handling: advice that varies by house, from memory, no published source.
 * The archive's own rule comes first.
 */
export const shrinkageAdvice = (part: number): string => {
  if (part < 0.008) return 'Below 0.8 %: it can be handled as usual.'
  if (part < 0.01)
    return 'Between 0.8 and 1 %: with caution; sprocketed machines at reduced tension.'
  if (part <= 0.02)
    return 'Between 1 and 2 %: not to be projected; adapted or sprocketless transport only.'
  return 'Over 2 %: for a specialist only.'
}
