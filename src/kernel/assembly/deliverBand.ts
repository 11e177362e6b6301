import { cbCodes, crCodes, yCodes } from './codeSettings'
import { deliveredRow } from './deliveredRow'
import { encodeRow } from './encodeRow'
import { width } from './rasterSettings'

/** Delivered rows `first` up to `end` as 10-bit codes, from the start of the three code planes. */
export function deliverBand(first: i32, end: i32): void {
  let at: usize = 0
  for (let y = first; y < end; y++) {
    encodeRow(deliveredRow(y), yCodes + at, cbCodes + at, crCodes + at)
    at += (width as usize) << 1
  }
}
