/** Something on a machine that is set: a knob, a trimmer, a number. */
export type Control = {
  readonly id: string
  readonly name: string
  readonly unit: string
  /** Hard limits: it is never set past these. */
  readonly low: number
  readonly high: number
}

/** Something that is read, and where it is to be. */
export type ReadingAim = {
  readonly id: string
  readonly name: string
  readonly unit: string
  /** What it is best at, and the limits it is to lie inside. */
  readonly aim: number
  readonly low: number
  readonly high: number
}

/** All controls as they were set, and all that was read then; each in the order of the sheet. */
export type Observation = {
  readonly settings: readonly number[]
  readonly values: readonly number[]
}

/** Controls and readings that act on each other, and everything that was tried. */
export type Adjustment = {
  readonly controls: readonly Control[]
  readonly readings: readonly ReadingAim[]
  /** The first is where it was begun; the last is how things stand. */
  readonly log: readonly Observation[]
}

/** The readings that lie outside their limits, by their places. */
export const readingsOutside = (
  readings: readonly ReadingAim[],
  values: readonly number[],
): readonly number[] =>
  readings.flatMap(({ low, high }, i) => {
    const value = values[i] ?? Number.NaN
    return value >= low && value <= high ? [] : [i]
  })
