import { isFiltered, isSaturated } from './levelSettings'
import { measureRuns } from './measureRuns'
import { Filtered, Saturated, Unfiltered, Unsaturated } from './variants'

/**
 * One delivered row into the statistics, from the row buffers of the rows above, at and below it
 * (only the middle one counts without the filter). The last sample must be repeated seven times.
 */
export function measureRow(upper: usize, middle: usize, lower: usize): void {
  if (isFiltered) {
    if (isSaturated) measureRuns<Filtered, Saturated>(upper, middle, lower)
    else measureRuns<Filtered, Unsaturated>(upper, middle, lower)
  } else {
    if (isSaturated) measureRuns<Unfiltered, Saturated>(upper, middle, lower)
    else measureRuns<Unfiltered, Unsaturated>(upper, middle, lower)
  }
}
