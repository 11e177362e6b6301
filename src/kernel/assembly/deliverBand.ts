import { codesRow } from './codesRow'
import { deliveredRow } from './deliveredRow'
import { width } from './rasterSettings'
import { Component, Delivered } from './variants'

/** Delivered rows `first` up to `end` as 10-bit codes, from the start of the three code planes. */
export function deliverBand(first: i32, end: i32): void {
  for (let y = first; y < end; y++)
    codesRow<Delivered, Component>(deliveredRow(y), (((y - first) * width) as usize) << 1)
}
