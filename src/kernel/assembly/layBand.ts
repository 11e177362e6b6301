import { deliveredRow } from './deliveredRow'
import { limitRow, saturateRow } from './finishRow'
import { layHalved, layWhole } from './layChroma'
import {
  firstLaid,
  hasHalfColumns,
  hasHalfRows,
  layBytes,
  layForm,
  overlayHeight,
  secondLaid,
  thirdLaid,
} from './laySettings'
import { isSaturated } from './levelSettings'
import { isLimited } from './limitSettings'
import { overlayRow } from './overlayRow'
import { planesRow } from './planesRow'
import { height, rowBytes, width } from './rasterSettings'
import { rgb16Row } from './rgb16Row'
import { noNumbersAfter } from './rowEnds'
import { Alone, Lower, Upper } from './variants'
import { wordsRow } from './wordsRow'

/** Delivered row `y` with all that is done to its levels. */
// @ts-ignore: decorator
@inline
function finishedRow(y: i32): usize {
  const row = deliveredRow(y)
  if (overlayHeight > 0) overlayRow(y, row)
  for (let c: usize = 0; c < 3; c++) noNumbersAfter(row + c * rowBytes, width)
  if (isSaturated) saturateRow(row)
  if (isLimited) limitRow(row)
  return row
}

/** Row `y` as planes. Lines of half-height chroma are counted from that of the band's first row. */
// @ts-ignore: decorator
@inline
function layPlanes<T>(y: i32, first: i32, row: usize): void {
  planesRow<T>(row, firstLaid + (((y - first) * width) as usize) * sizeof<T>())
  const columns = hasHalfColumns ? (width + 1) >> 1 : width
  const line = hasHalfRows ? (y >> 1) - (first >> 1) : y - first
  const at = ((line * columns) as usize) * sizeof<T>()
  const toCb = secondLaid + at
  const toCr = thirdLaid + at
  if (!hasHalfColumns) layWhole<T>(toCb, toCr)
  else if (hasHalfRows && y & 1) layHalved<T, Lower>(toCb, toCr)
  else if (hasHalfRows && y < height - 1) layHalved<T, Upper>(toCb, toCr)
  else layHalved<T, Alone>(toCb, toCr)
}

/**
 * Delivered rows `first` up to `end` as bytes of the form asked for, from the start of the band's
 * memory. All rows of a picture are to be given once, in their order: the upper of two lines that
 * share chroma may be the last of one band, then that chroma is the first of the next.
 */
export function layBand(first: i32, end: i32): void {
  for (let y = first; y < end; y++) {
    const row = finishedRow(y)
    const pixels = ((y - first) * width) as usize
    if (layForm == 0) wordsRow(row, firstLaid + pixels * 4)
    else if (layForm == 1) rgb16Row(row, firstLaid + pixels * 6)
    else if (layBytes == 1) layPlanes<u8>(y, first, row)
    else layPlanes<u16>(y, first, row)
  }
}
