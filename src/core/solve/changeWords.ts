import type { Triple } from '../colour/triple.ts'
import type { BroughtInside } from './bringInside.ts'
import type { ChangedNumber } from './changedNumbers.ts'
import type { Matched } from './matchTo.ts'
import type { NeutralGrade } from './neutralHere.ts'
import type { RestoredDye } from './restoreDye.ts'

const CHANNELS = ['R', 'G', 'B'] as const

const fixed = (value: number, decimals: number): string => {
  const text = value.toFixed(decimals)
  return Number(text) === 0 ? (0).toFixed(decimals) : text.replace('-', '−')
}

/** A part as a percentage: two decimals below two percent, else one. */
const percent = (part: number): string => {
  const value = part * 100
  if (value === 0) return '0 %'
  if (value > 0 && value < 0.01) return '< 0.01 %'
  return `${fixed(value, value < 2 ? 2 : 1)} %`
}

/** A list as prose has it: “a, b and c”. */
const listed = (words: readonly string[]): string =>
  words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`

const nameOf = ({ term, channel }: ChangedNumber): string =>
  term === 'saturation' ? '' : channel === undefined ? 'all ' : `${CHANNELS[channel]} `

/** “Changes: lift R 0.000 → 0.012, G 0.000 → 0.003; gain all 1.000 → 0.962.” */
export const changedWords = (changed: readonly ChangedNumber[]): string => {
  const seen = changed.filter(({ from, to }) => fixed(from, 3) !== fixed(to, 3))
  if (seen.length === 0) return 'Less changes than the numbers show.'
  const terms = [...new Set(seen.map(({ term }) => term))].map((term) => {
    const own = seen
      .filter((number) => number.term === term)
      .map((number) => `${nameOf(number)}${fixed(number.from, 3)} → ${fixed(number.to, 3)}`)
    return `${term} ${own.join(', ')}`
  })
  return `Changes: ${terms.join('; ')}.`
}

/** What the colours of a cue do not tell of its verdict. */
export type Unsettled = {
  readonly profileName: string
  /** Part of the pixels that may be outside. */
  readonly area: number
  /** What is outside at worst on frames that were measured with the change, and how many these are. */
  readonly worst?: { readonly part: number; readonly frames: number }
  readonly isFiltered: boolean
  readonly isRamped: boolean
  readonly isFramed: boolean
}

/** Why only measuring the frames settles the verdict. */
const whyMeasure = ({ isFiltered, isRamped, isFramed, area, worst }: Unsettled): string => {
  if (worst)
    return worst.part > area
      ? 'That is still more than may be: grade on by hand.'
      : 'The verdict on every frame follows once it is kept.'
  const reasons = [
    ...(isFiltered ? ['after the filter'] : []),
    ...(area > 0 ? ['frame by frame'] : []),
    ...(isRamped ? ['over the ramp'] : []),
    ...(isFramed ? ['with what the framing makes'] : []),
  ]
  return reasons.length === 0
    ? 'All pixels were counted: it holds for every frame.'
    : `The verdict counts ${listed(reasons)}: measuring, once it is kept, confirms it.`
}

/** That a measured cue is inside already; `part` is outside at worst, `area` may be. */
export const insideWords = (
  part: number,
  { area, name }: { readonly area: number; readonly name: string },
): string =>
  `Nothing is to be done: as measured, ${percent(part)} of a frame is outside “${name}” at worst, and ${allowedWords(area)}.`

const allowedWords = (area: number): string =>
  area === 0 ? 'none may be' : `${percent(area)} may be`

/** What bringing a cue inside changes, in sentences; where nothing is to be done, that. */
export const broughtInsideWords = (
  { changed, meanDeltaE, shareBefore, shareAfter }: BroughtInside,
  unsettled: Unsettled,
): readonly string[] => {
  const { profileName, area } = unsettled
  const allowed = allowedWords(area)
  if (changed.length === 0)
    return [
      `Nothing is to be done: ${percent(shareBefore)} of the cue’s pixels are outside “${profileName}”, and ${allowed}.`,
      ...(unsettled.isFiltered || unsettled.isRamped || unsettled.isFramed || shareBefore > 0
        ? [whyMeasure(unsettled)]
        : []),
    ]
  const { worst, isFiltered } = unsettled
  const measured = worst
    ? `; of ${worst.frames} frames measured the worst has ${percent(worst.part)}${isFiltered ? ' after the filter' : ''}`
    : ''
  return [
    changedWords(changed),
    `Outside “${profileName}”: ${percent(shareBefore)} of the pixels before, ${percent(shareAfter)} after${measured}; ${allowed}.`,
    `Mean change ΔE00 ${fixed(meanDeltaE, 1)}. ${whyMeasure(unsettled)}`,
  ]
}

/** What making picked places neutral changes. */
export const neutralWords = (
  { isExact, residuals }: NeutralGrade,
  changed: readonly ChangedNumber[],
): readonly string[] => {
  const isOne = residuals.length === 1
  const places = isOne ? 'The place picked' : `The ${residuals.length} places picked`
  if (changed.length === 0) return [`${places} ${isOne ? 'is' : 'are'} neutral already.`]
  const become = isOne
    ? 'becomes neutral and keeps its brightness'
    : 'become neutral and keep their brightness'
  const left = percent(Math.max(...residuals))
  return [
    changedWords(changed),
    isExact
      ? `${places} ${become}.`
      : `${places} only ${isOne ? 'comes' : 'come'} near neutral: ${left} of signal is left at most.`,
  ]
}

/** What matching to a reference changes; `reference` is its name. */
export const matchedWords = (
  { changed, apartBefore, apartAfter }: Matched,
  reference: string,
): readonly string[] => {
  if (changed.length === 0)
    return [
      `Nothing is changed: the levels are ${percent(apartBefore)} of signal from those of ${reference}, and no grade brings them nearer.`,
    ]
  return [
    changedWords(changed),
    `The levels were ${percent(apartBefore)} of signal from those of ${reference}; they would be ${percent(apartAfter)}.`,
    'It goes by the spread of levels: between pictures with little in common it may not fit. Look before you keep it.',
  ]
}

const keptWords = (kept: Triple): string => {
  const [cyan, magenta, yellow] = kept.map((part) => `${fixed(part * 100, 0)} %`)
  return `Cyan has kept ${cyan} of its dye, magenta ${magenta}, yellow ${yellow}.`
}

/** What a dye restoration finds and does. */
export const restoredDyeWords = ({ kept, residual, darkest }: RestoredDye): readonly string[] => [
  keptWords(kept),
  `The darkest hundredth of a few frames begins at density ${fixed(darkest.before, 2)} as scanned, at ${fixed(darkest.after, 2)} restored. Picked places are ${percent(residual)} of signal from neutral at most.`,
  'How much the best dye has kept cannot be told from a picture: it is assumed.',
]
