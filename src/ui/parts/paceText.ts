import type { Progress } from '../../store/state.ts'
import { formatNumber } from './numberText.ts'

/** How far a long job is, in words: part done, rate, time left. */
export const paceText = (
  words: string,
  { done, total, framesPerSecond, secondsLeft }: Progress,
): string =>
  [
    `${words} ${formatNumber((100 * done) / Math.max(1, total), 0)} %`,
    ...(framesPerSecond < 0.5 ? [] : [`${formatNumber(framesPerSecond, 0)} frames/s`]),
    ...(secondsLeft === undefined ? [] : [`${formatNumber(Math.ceil(secondsLeft), 0)} s left`]),
  ].join(' · ')
