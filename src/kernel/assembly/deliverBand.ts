import { deliveredRow } from './deliveredRow'
import { levelsRow } from './levelsRow'
import { width } from './rasterSettings'
import { Component, Delivered, Saturated, Unfiltered } from './variants'

/** Delivered rows `first` up to `end` as 10-bit codes, from the start of the three code planes. */
export function deliverBand(first: i32, end: i32): void {
  for (let y = first; y < end; y++) {
    const row = deliveredRow(y)
    const at = (((y - first) * width) as usize) << 1
    levelsRow<Unfiltered, Delivered, Saturated, Component>(row, row, row, at)
  }
}
