import {
  columnOffsets,
  columnWeights,
  framedEnd,
  framedFrom,
  framedRow,
  mixedRow,
  rowBytes,
  tapsAcross,
} from './rasterSettings'

/** The sum of each of four vectors' lanes. */
// @ts-ignore: decorator
@inline
function sums4(a: v128, b: v128, c: v128, d: v128): v128 {
  const ab = f32x4.add(v128.shuffle<f32>(a, b, 0, 4, 1, 5), v128.shuffle<f32>(a, b, 2, 6, 3, 7))
  const cd = f32x4.add(v128.shuffle<f32>(c, d, 0, 4, 1, 5), v128.shuffle<f32>(c, d, 2, 6, 3, 7))
  return f32x4.add(v128.shuffle<f32>(ab, cd, 0, 1, 4, 5), v128.shuffle<f32>(ab, cd, 2, 3, 6, 7))
}

/** Four delivered columns of each channel, each from four samples of the mixed row. */
function resampleByFour(): void {
  const stride = rowBytes
  const from = mixedRow
  for (let i = framedFrom; i < framedEnd; i += 16) {
    const offsets = columnOffsets + i
    const weights = columnWeights + (i << 2)
    const ofA = v128.load(weights)
    const ofB = v128.load(weights, 16)
    const ofC = v128.load(weights, 32)
    const ofD = v128.load(weights, 48)
    let a = from + load<i32>(offsets)
    let b = from + load<i32>(offsets, 4)
    let c = from + load<i32>(offsets, 8)
    let d = from + load<i32>(offsets, 12)
    let to = framedRow + i
    for (let channel = 0; channel < 3; channel++) {
      v128.store(
        to,
        sums4(
          f32x4.mul(v128.load(a), ofA),
          f32x4.mul(v128.load(b), ofB),
          f32x4.mul(v128.load(c), ofC),
          f32x4.mul(v128.load(d), ofD),
        ),
      )
      a += stride
      b += stride
      c += stride
      d += stride
      to += stride
    }
  }
}

/** The sum of `bytes` bytes of samples, each by its weight, in four parts. */
// @ts-ignore: decorator
@inline
function products(samples: usize, weights: usize, bytes: usize): v128 {
  let sum = f32x4.splat(0)
  for (let k: usize = 0; k < bytes; k += 16)
    sum = f32x4.add(sum, f32x4.mul(v128.load(samples + k), v128.load(weights + k)))
  return sum
}

/** The same with more samples to each column. */
function resampleByMany(): void {
  const bytes = (tapsAcross as usize) << 2
  for (let channel: usize = 0; channel < 3; channel++) {
    const from = mixedRow + channel * rowBytes
    const to = framedRow + channel * rowBytes
    for (let i = framedFrom; i < framedEnd; i += 16) {
      const offsets = columnOffsets + i
      const weights = columnWeights + i * (tapsAcross as usize)
      v128.store(
        to + i,
        sums4(
          products(from + load<i32>(offsets), weights, bytes),
          products(from + load<i32>(offsets, 4), weights + bytes, bytes),
          products(from + load<i32>(offsets, 8), weights + 2 * bytes, bytes),
          products(from + load<i32>(offsets, 12), weights + 3 * bytes, bytes),
        ),
      )
    }
  }
}

/** Reads the mixed row at every delivered column that shows something of the scan. */
export function resampleRow(): void {
  if (tapsAcross == 4) resampleByFour()
  else resampleByMany()
}
