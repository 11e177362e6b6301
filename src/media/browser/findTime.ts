/** Stamps come back from the decoder in whole microseconds; half of the least distance between two. */
const SLACK = 2e-6

/** How many of the sorted numbers come before `isPast` holds. */
const countBefore = (sorted: readonly number[], isPast: (value: number) => boolean): number => {
  let low = 0
  let high = sorted.length
  while (low < high) {
    const middle = (low + high) >> 1
    if (isPast(sorted[middle] ?? Number.POSITIVE_INFINITY)) high = middle
    else low = middle + 1
  }
  return low
}

/** Index of the first of some sorted times that is not earlier than `time`. */
export const firstAtOrAfter = (times: readonly number[], time: number): number =>
  countBefore(times, (value) => value >= time - SLACK)

/** The last of some sorted numbers that is not greater than `limit`; 0 where there is none. */
export const lastAtOrBefore = (sorted: readonly number[], limit: number): number =>
  sorted[countBefore(sorted, (value) => value > limit) - 1] ?? 0
