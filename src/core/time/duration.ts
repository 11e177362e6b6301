import { type Rate, secondsAt } from './rate.ts'

/**
 * The time `frames` take at a rate, to a tenth of a second: `4.2 s`, from a minute on `1:04.2`,
 * from an hour on `1:02:04.2`. Rounded once, from the exact fraction, so that a minute never
 * shows 60 seconds.
 */
export const formatSeconds = (frames: number, rate: Rate): string => {
  const tenths = Math.round(Math.abs(secondsAt(frames, rate)) * 10)
  const sign = frames < 0 && tenths > 0 ? '−' : ''
  const seconds = (tenths % 600) / 10
  const minutes = Math.floor(tenths / 600) % 60
  const hours = Math.floor(tenths / 36_000)
  if (hours === 0 && minutes === 0) return `${sign}${seconds.toFixed(1)} s`
  const two = (text: string, width: number) => text.padStart(width, '0')
  const end = two(seconds.toFixed(1), 4)
  return hours === 0
    ? `${sign}${minutes}:${end}`
    : `${sign}${hours}:${two(String(minutes), 2)}:${end}`
}
