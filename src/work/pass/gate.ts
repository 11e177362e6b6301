/** Where a pass waits while it is paused. */
export type Gate = {
  readonly pause: (isPaused: boolean) => void
  /** Resolves at once, or when the pause is over; rejects with the signal's reason. */
  readonly open: (signal: AbortSignal) => Promise<void>
  /** Milliseconds on a clock that stands while it is paused, whatever happens to the day's time. */
  readonly now: () => number
}

export const createGate = (clock: () => number = () => performance.now()): Gate => {
  let pausedAt: number | undefined
  let paused = 0
  const waiting = new Set<() => void>()
  return {
    pause: (isPaused) => {
      if (isPaused) pausedAt ??= clock()
      else if (pausedAt !== undefined) {
        paused += clock() - pausedAt
        pausedAt = undefined
        for (const go of waiting) go()
      }
    },
    open: async (signal) => {
      signal.throwIfAborted()
      while (pausedAt !== undefined) {
        await new Promise<void>((resolve) => {
          const go = (): void => {
            waiting.delete(go)
            signal.removeEventListener('abort', go)
            resolve()
          }
          waiting.add(go)
          signal.addEventListener('abort', go)
        })
        signal.throwIfAborted()
      }
    },
    now: () => (pausedAt ?? clock()) - paused,
  }
}
