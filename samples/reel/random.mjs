/** A small repeatable source of chance: the same seed gives the same reel. */
export const createRandom = (seed) => {
  let state = seed >>> 0
  /** Evenly from 0 up to 1 (a 32-bit mixing generator). */
  return () => {
    state = (state + 0x6d2b79f5) >>> 0
    let mixed = Math.imul(state ^ (state >>> 15), state | 1)
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61)
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296
  }
}

/** About normal, from three even chances: mean 0, deviation 1. */
export const normal = (random) => 2 * (random() + random() + random() - 1.5)
