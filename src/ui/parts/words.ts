import type { Verdict } from '../../core/tolerance/verdict.ts'
import { formatNumber } from './numberText.ts'

/** A fraction of the area as the screen writes it: two figures where it is small. */
export const formatArea = (part: number): string => {
  const percent = part * 100
  if (percent === 0) return '0 %'
  if (percent < 0.01) return '< 0.01 %'
  return `${formatNumber(percent, percent < 1 ? 2 : 1)} %`
}

/** A signal level in percent: 0 black, 100 nominal peak. */
export const formatLevel = (level: number): string => `${formatNumber(level * 100, 1)} %`

export type VerdictWords = {
  readonly sign: string
  readonly word: string
  readonly detail: string
}

/** A verdict as a shape and a word: ● inside, ▲ over, ▼ under, ◆ both. */
export const verdictWords = (verdict: Verdict | undefined): VerdictWords => {
  if (!verdict) return { sign: '◌', word: 'not measured', detail: '' }
  if (verdict.isInside)
    return { sign: '●', word: 'inside', detail: formatArea(verdict.areaOutside) }
  const isOver = verdict.areaAbove > 0
  const isUnder = verdict.areaBelow > 0
  const detail = formatArea(verdict.areaOutside)
  if (isOver && isUnder) return { sign: '◆', word: 'over and under', detail }
  return isOver ? { sign: '▲', word: 'over', detail } : { sign: '▼', word: 'under', detail }
}
