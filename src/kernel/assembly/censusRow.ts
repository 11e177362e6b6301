import {
  chromaLineBytes,
  chromaLines,
  firstDrop,
  firstShift,
  keyRow,
  otherDrop,
  secondShift,
} from './censusSettings'
import { countKeys } from './censusTable'
import {
  chromaColumns,
  chromaRows,
  firstPlane,
  isHalfHeight,
  layout,
  sampleBytes,
  secondPlane,
  thirdPlane,
  width,
} from './rasterSettings'
import { load4 } from './samples'

// @ts-ignore: decorator
@inline
function keys4(first: v128, second: v128, third: v128): v128 {
  const ones = i32x4.splat(1)
  const a = i32x4.shr_u(first, firstDrop)
  const b = i32x4.shr_u(second, otherDrop)
  const c = i32x4.shr_u(third, otherDrop)
  const high = v128.or(
    v128.or(
      i32x4.shl(i32x4.shr_u(a, 1), firstShift),
      i32x4.shl(i32x4.shr_u(b, 1), secondShift),
    ),
    i32x4.shl(i32x4.shr_u(c, 1), 3),
  )
  const low = v128.or(
    v128.or(i32x4.shl(v128.and(a, ones), 2), i32x4.shl(v128.and(b, ones), 1)),
    v128.and(c, ones),
  )
  return v128.or(high, low)
}

/** The keys of row `y` where every pixel has a sample of each plane. */
function makeWholeKeys<T>(y: i32): void {
  const row = ((y * width) as usize) * sizeof<T>()
  let first = firstPlane + row
  let second = secondPlane + row
  let third = thirdPlane + row
  const end = keyRow + ((width as usize) << 2)
  for (let to = keyRow; to < end; to += 16) {
    v128.store(to, keys4(load4<T>(first), load4<T>(second), load4<T>(third)))
    first += 4 * sizeof<T>()
    second += 4 * sizeof<T>()
    third += 4 * sizeof<T>()
  }
}

/** A line of chroma at the height of row `y`: as it is, or in quarters between two lines. */
// @ts-ignore: decorator
@inline
function makeChromaLine<T>(plane: usize, y: i32, out: usize): void {
  const columns = chromaColumns as usize
  const pitch = columns * sizeof<T>()
  const end = out + (columns << 2)
  if (isHalfHeight) {
    const near = y >> 1
    const far = min(max(near + ((y & 1) << 1) - 1, 0), chromaRows - 1)
    let from = plane + (near as usize) * pitch
    const step = ((far - near) as usize) * pitch
    for (let to = out; to < end; to += 16) {
      const here = load4<T>(from)
      v128.store(to, i32x4.add(i32x4.add(here, i32x4.shl(here, 1)), load4<T>(from + step)))
      from += 4 * sizeof<T>()
    }
  } else {
    let from = plane + (y as usize) * pitch
    for (let to = out; to < end; to += 16) {
      v128.store(to, load4<T>(from))
      from += 4 * sizeof<T>()
    }
  }
  store<i32>(end, load<i32>(end - 4))
}

/** The keys of row `y` where chroma has half the columns: a whole sample is two halves. */
function makeHalfKeys<T>(y: i32): void {
  const cbLine = chromaLines
  const crLine = chromaLines + chromaLineBytes
  makeChromaLine<T>(secondPlane, y, cbLine)
  makeChromaLine<T>(thirdPlane, y, crLine)
  let first = firstPlane + ((y * width) as usize) * sizeof<T>()
  let chroma: usize = 0
  const end = keyRow + ((width as usize) << 2)
  for (let to = keyRow; to < end; to += 32) {
    const cb = v128.load(cbLine + chroma)
    const cr = v128.load(crLine + chroma)
    const cbBetween = i32x4.add(cb, v128.load(cbLine + chroma, 4))
    const crBetween = i32x4.add(cr, v128.load(crLine + chroma, 4))
    const cbOn = i32x4.shl(cb, 1)
    const crOn = i32x4.shl(cr, 1)
    v128.store(
      to,
      keys4(
        load4<T>(first),
        v128.shuffle<i32>(cbOn, cbBetween, 0, 4, 1, 5),
        v128.shuffle<i32>(crOn, crBetween, 0, 4, 1, 5),
      ),
    )
    v128.store(
      to,
      keys4(
        load4<T>(first + 4 * sizeof<T>()),
        v128.shuffle<i32>(cbOn, cbBetween, 2, 6, 3, 7),
        v128.shuffle<i32>(crOn, crBetween, 2, 6, 3, 7),
      ),
      16,
    )
    first += 8 * sizeof<T>()
    chroma += 16
  }
}

// @ts-ignore: decorator
@inline
function makeKeys<T>(y: i32): void {
  if (layout == 0) makeHalfKeys<T>(y)
  else makeWholeKeys<T>(y)
}

/** Counts the colours of columns `first` up to `end` of source row `y`. */
export function countColours(y: i32, first: i32, end: i32): void {
  if (sampleBytes == 1) makeKeys<u8>(y)
  else makeKeys<u16>(y)
  countKeys(keyRow + ((first as usize) << 2), keyRow + ((end as usize) << 2))
}
