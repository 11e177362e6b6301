/** How a long job is getting on. */
export type Pace = {
  readonly done: number
  readonly total: number
  readonly framesPerSecond: number
  /** Undefined until there is enough to judge by. */
  readonly secondsLeft: number | undefined
}

/** Works out rate and time left from how many frames are done; `now` in milliseconds. */
export const createPaceKeeper = (total: number, now: () => number) => {
  const begun = now()
  return (done: number): Pace => {
    const seconds = (now() - begun) / 1000
    const framesPerSecond = seconds > 0 ? done / seconds : 0
    return {
      done,
      total,
      framesPerSecond,
      secondsLeft: done > 10 && seconds > 0.5 ? (total - done) / framesPerSecond : undefined,
    }
  }
}
