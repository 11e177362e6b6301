import type { Agreement } from '../agreement/agreementOf.ts'
import { exactDecimal, shortDecimal } from '../formats/decimal.ts'
import type { Reel } from '../job/job.ts'
import { formatTimecode } from '../time/timecode.ts'
import type { Verdict } from '../tolerance/verdict.ts'

const MINUS = '−'

const PLACES = 6

/** A number of a grade: at most six decimals, a true minus sign. */
export const numberText = (value: number): string => shortDecimal(value, PLACES).replace('-', MINUS)

/** Whether `numberText` says less of a number than it is. */
export const isRounded = (value: number): boolean =>
  exactDecimal(value) !== shortDecimal(value, PLACES)

/** A number with just these decimals. */
export const fixedText = (value: number, decimals: number): string => {
  const text = value.toFixed(decimals)
  return Number(text) === 0 ? (0).toFixed(decimals) : text.replace('-', MINUS)
}

/** A whole number with its thousands apart. */
export const countText = (count: number): string =>
  String(count).replace(/\B(?=(?:\d{3})+$)/gu, ',')

/** A signal level in percent: 0 black, 100 nominal peak. */
export const levelText = (level: number): string => fixedText(level * 100, 1)

/** A part of an area in percent, two figures where it is small. */
export const areaText = (part: number): string => {
  const percent = part * 100
  if (percent === 0) return '0 %'
  return percent < 0.01 ? '< 0.01 %' : `${fixedText(percent, percent < 1 ? 2 : 1)} %`
}

/** A verdict as a shape and a word. */
export const verdictText = (verdict: Verdict | undefined): string => {
  if (!verdict) return '◌ not measured'
  if (verdict.isInside) return '● inside'
  const isOver = verdict.areaAbove > 0
  const isUnder = verdict.areaBelow > 0
  if (isOver && isUnder) return '◆ over and under'
  return isOver ? '▲ over' : '▼ under'
}

export const AGREEMENT_TEXT: Readonly<Record<Agreement, string>> = {
  open: '○ open',
  agreed: '✓ agreed',
  asked: '✎ changes asked',
  changed: '≠ changed since',
}

/** The label of a frame of a reel. */
export const timecodeOf = ({ startCount, rate, isDropFrame }: Reel, frame: number): string =>
  formatTimecode(startCount + frame, rate, isDropFrame)
