import type { Verdict } from '../../core/tolerance/verdict.ts'
import type { LiveVerdict } from '../../store/state.ts'
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

/** Whether levels and areas are those after the filter of EBU R 103 v3, in words. */
export const filterWords = (isFiltered: boolean): string =>
  isFiltered ? 'after the filter' : 'unfiltered'

export type VerdictWords = {
  readonly sign: string
  readonly word: string
  readonly detail: string
}

/** The same where it may be wrapped: a number keeps its unit on its line. */
const unbroken = (text: string): string => text.replaceAll(' ', '\u00a0')

/** A verdict as a shape and a word: ● inside, ▲ over, ▼ under, ◆ both. */
export const verdictWords = (verdict: Verdict | undefined): VerdictWords => {
  if (!verdict) return { sign: '◌', word: 'not measured', detail: '' }
  const detail = unbroken(formatArea(verdict.areaOutside))
  if (verdict.isInside) return { sign: '●', word: 'inside', detail }
  const isOver = verdict.areaAbove > 0
  const isUnder = verdict.areaBelow > 0
  if (isOver && isUnder) return { sign: '◆', word: 'over and under', detail }
  return isOver ? { sign: '▲', word: 'over', detail } : { sign: '▼', word: 'under', detail }
}

/** Pixels out as a part of a cue: one number, or two where its colours are only told roughly. */
export const formatPartOut = ({
  outsideAtLeast,
  outsideAtMost,
  pixels,
}: LiveVerdict['verdict']): string => {
  const least = formatArea(outsideAtLeast / pixels)
  const most = formatArea(outsideAtMost / pixels)
  return least === most ? most : `${least.replace(' %', '')}…${most}`
}

/** A live verdict as a shape and a word: ● inside and ◆ outside are sure, ◇ needs measuring. */
export const liveWords = ({ verdict, standing }: LiveVerdict): VerdictWords => {
  if (standing === 'inside') return { sign: '●', word: 'inside', detail: '' }
  // What the colours do not tell of, a ramp, reframing or bars, is still to be measured.
  if (verdict.outsideAtMost === 0) return { sign: '◇', word: 'none out', detail: 'unfiltered' }
  const detail = `${unbroken(formatPartOut(verdict))} unfiltered`
  return standing === 'outside'
    ? { sign: '◆', word: 'outside', detail }
    : { sign: '◇', word: 'some out', detail }
}
