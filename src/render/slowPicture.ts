/** A picture that takes longer does not follow a hand; one that takes less surely does. */
const SLOW_MS = 20
const FAST_MS = 12

/** Half as many pixels each way, where one of full size is slow. */
export const SLOW_PART = 0.5

/**
 * Whether pictures of full size are slow, from the time (ms) that the last one took and the part
 * of the pixels each way that it had. Between the two times it stays as it was.
 */
export const isSlowPicture = (took: number, part: number, wasSlow: boolean): boolean =>
  took / part ** 2 > (wasSlow ? FAST_MS : SLOW_MS)
