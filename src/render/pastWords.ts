import { type LevelUnit, levelInUnit } from '../core/colour/levelUnits.ts'
import type { PictureLevels } from '../core/tolerance/pictureLevels.ts'
import { FIRST_LEVEL, LAST_LEVEL, levelEdge } from './levelCounts.ts'
import { tickText } from './levelScale.ts'

/** The ends of a signal, unfiltered. */
export type SignalEnds = Pick<PictureLevels, 'r' | 'g' | 'b' | 'y'>

export type EndFigure = keyof SignalEnds

const NAMES: Readonly<Record<EndFigure, string>> = { r: 'R′', g: 'G′', b: 'B′', y: 'Y′' }
const UNITS: Readonly<Record<LevelUnit, string>> = { percent: ' %', millivolts: ' mV', code: '' }

const PAST_HIGH = levelEdge(LAST_LEVEL + 1)
const PAST_LOW = levelEdge(FIRST_LEVEL)

/** How far the figures that are past the upper or lower edge go, in words; '' where none is. */
export const pastWords = (
  ends: SignalEnds | undefined,
  figures: readonly EndFigure[],
  unit: LevelUnit,
  side: 'above' | 'below',
): string => {
  if (!ends) return ''
  const isPast = (figure: EndFigure): boolean =>
    side === 'above' ? ends[figure].high > PAST_HIGH : ends[figure].low < PAST_LOW
  const textOf = (figure: EndFigure): string => {
    const level = side === 'above' ? ends[figure].high : ends[figure].low
    const whole = Math.round(levelInUnit(level, unit))
    return `${NAMES[figure]} ${tickText(whole, unit)}`
  }
  const past = figures.filter(isPast).map(textOf)
  return past.length === 0 ? '' : `${side === 'above' ? '▲' : '▼'} ${past.join('  ')}${UNITS[unit]}`
}
