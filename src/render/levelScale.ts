import { type ScaleLinear, scaleLinear } from 'd3-scale'
import { type LevelUnit, levelInUnit } from '../core/colour/levelUnits.ts'

/** The span of signal that level instruments show, −8 % … 112 %. */
export const LOWEST_SHOWN = -0.08
export const HIGHEST_SHOWN = 1.12

/** Levels along an axis, in its unit. */
export type LevelScale = {
  readonly unit: LevelUnit
  readonly scale: ScaleLinear<number, number>
  /** Where a signal level (0 black, 1 peak) stands. */
  readonly place: (level: number) => number
}

/** A scale of `unit` from the place of the lowest level shown to that of the highest. */
export const levelScale = (unit: LevelUnit, lowest: number, highest: number): LevelScale => {
  const scale = scaleLinear()
    .domain([levelInUnit(LOWEST_SHOWN, unit), levelInUnit(HIGHEST_SHOWN, unit)])
    .range([lowest, highest])
  return { unit, scale, place: (level) => scale(levelInUnit(level, unit)) }
}

/**
 * The numbers of an axis: black and peak, and round numbers about `apart` pixels from each other
 * that do not come near those two.
 */
export const levelTicks = ({ unit, scale }: LevelScale, apart: number): readonly number[] => {
  const [from = 0, to = 0] = scale.range()
  const ends = [levelInUnit(0, unit), levelInUnit(1, unit)]
  const isClear = (tick: number): boolean =>
    ends.every((end) => Math.abs(scale(tick) - scale(end)) >= apart * 0.6)
  const round = scale.ticks(Math.max(2, Math.round(Math.abs(to - from) / apart)))
  return [...ends, ...round.filter(isClear)].sort((a, b) => a - b)
}

/** A number of an axis in words: percent to a tenth, the others whole; a true minus sign. */
export const tickText = (value: number, unit: LevelUnit): string => {
  const rounded = unit === 'percent' ? Math.round(value * 10) / 10 : Math.round(value)
  return String(rounded === 0 ? 0 : rounded).replace('-', '−')
}
