import { formatSeconds } from '../time/duration.ts'
import type { Gauge } from '../time/footage.ts'
import { framesPerSecond, type Rate, rate, sameRate, secondsAt } from '../time/rate.ts'
import { feetPerMinute } from './filmLength.ts'

/** Speeds film was made for, and is run at for television. */
const SPEEDS: readonly Rate[] = [rate(16), rate(50, 3), rate(18), rate(24), rate(25)]

/** A speed as it is written: 16⅔ and 23.976 among them. */
export const speedWords = (speed: Rate): string =>
  sameRate(speed, rate(50, 3)) ? '16⅔' : String(Number(framesPerSecond(speed).toFixed(3)))

/** How long film runs at a speed. */
export type RunningTime = {
  readonly rate: Rate
  readonly words: string
  readonly seconds: number
  readonly time: string
  readonly feetPerMinute: number
}

/** The running time of so many frames at the usual speeds, and at `speed` where it is none of them. */
export const runningTimes = (frames: number, gauge: Gauge, speed: Rate): readonly RunningTime[] => {
  const speeds = SPEEDS.some((each) => sameRate(each, speed)) ? SPEEDS : [...SPEEDS, speed]
  return speeds.map((each) => ({
    ...{ rate: each, words: speedWords(each), seconds: secondsAt(frames, each) },
    ...{ time: formatSeconds(frames, each), feetPerMinute: feetPerMinute(gauge, each) },
  }))
}
