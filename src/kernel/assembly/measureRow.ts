import { isComposite, isFiltered, isSaturated } from './levelSettings'
import { measureRuns } from './measureRuns'
import { Component, Composite, Filtered, Saturated, Unfiltered, Unsaturated } from './variants'

// @ts-ignore: decorator
@inline
function measure<F, S>(upper: usize, middle: usize, lower: usize): void {
  if (isComposite) measureRuns<F, S, Composite>(upper, middle, lower)
  else measureRuns<F, S, Component>(upper, middle, lower)
}

/**
 * One delivered row into the statistics, from the row buffers of the rows above, at and below it
 * (only the middle one counts without the filter). The seven samples after the last must be no numbers.
 */
export function measureRow(upper: usize, middle: usize, lower: usize): void {
  if (isFiltered) {
    if (isSaturated) measure<Filtered, Saturated>(upper, middle, lower)
    else measure<Filtered, Unsaturated>(upper, middle, lower)
  } else {
    if (isSaturated) measure<Unfiltered, Saturated>(upper, middle, lower)
    else measure<Unfiltered, Unsaturated>(upper, middle, lower)
  }
}
