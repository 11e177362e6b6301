import type { Frame } from '../time/frame.ts'
import type { StripeBreach } from './flashReport.ts'

/** What stripes may cover: a quarter, or two fifths where they keep still (UK annex, paraphrased). */
const MOST_MOVING = 0.25
const MOST_STILL = 0.4

/** What stripes were seen on one frame: `area` as a part of the picture, 0…1. */
export type StripeLook = {
  readonly pairs: number
  readonly area: number
  readonly isStill: boolean
}

/** Gathers looks at frames `every` frames apart, in their order, into breaches. */
export const createStripeRuns = (every: number) => {
  const breaches: StripeBreach[] = []
  return {
    add: (now: Frame, { pairs, area, isStill }: StripeLook): void => {
      if (area <= (isStill ? MOST_STILL : MOST_MOVING)) return
      const before = breaches.at(-1)
      const goesOn = before !== undefined && now - before.last <= every
      const breach: StripeBreach = {
        kind: 'stripes',
        first: goesOn ? before.first : now,
        last: now,
        pairs: Math.max(pairs, goesOn ? before.pairs : 0),
        area: Math.max(area, goesOn ? before.area : 0),
        isStill: isStill && (!goesOn || before.isStill),
      }
      if (goesOn) breaches.pop()
      breaches.push(breach)
    },
    breaches: (): readonly StripeBreach[] => [...breaches],
  }
}
