import { rowBytes, width } from './rasterSettings'
import { repeatEnds } from './rowEnds'

/** Samples beyond each end that the taps of a pixel reach. */
const REACH: i32 = 3

// @ts-ignore: decorator
@inline
function plusNext(a: v128, b: v128): v128 {
  return f32x4.add(a, v128.shuffle<f32>(a, b, 1, 2, 3, 4))
}

// @ts-ignore: decorator
@inline
function plusSecond(a: v128, b: v128): v128 {
  return f32x4.add(a, v128.shuffle<f32>(a, b, 2, 3, 4, 5))
}

/**
 * A row buffer through the horizontal taps 1 2 3 4 3 2 1 of EBU R 103 v3, not divided by their
 * sum: four equal taps, twice, each as two pairs. Ends repeated.
 */
export function filterRow(row: usize, out: usize): void {
  const size = (width as usize) << 2
  for (let c: usize = 0; c < 3; c++) {
    const plane = row + c * rowBytes
    repeatEnds(plane, width, REACH)
    let from = plane - 12
    const start = out + c * rowBytes
    const end = start + size
    let last = v128.load(from)
    let samples = v128.load(from, 16)
    let lastPairs = plusNext(last, samples)
    last = samples
    samples = v128.load(from, 32)
    let pairs = plusNext(last, samples)
    let lastFours = plusSecond(lastPairs, pairs)
    lastPairs = pairs
    last = samples
    samples = v128.load(from, 48)
    pairs = plusNext(last, samples)
    let fours = plusSecond(lastPairs, pairs)
    let lastPaired = plusNext(lastFours, fours)
    for (let to = start; to < end; to += 32) {
      const next = v128.load(from, 64)
      const nextPairs = plusNext(samples, next)
      const nextFours = plusSecond(pairs, nextPairs)
      const paired = plusNext(fours, nextFours)
      v128.store(to, plusSecond(lastPaired, paired))
      samples = v128.load(from, 80)
      pairs = plusNext(next, samples)
      fours = plusSecond(nextPairs, pairs)
      lastPaired = plusNext(nextFours, fours)
      v128.store(to, plusSecond(paired, lastPaired), 16)
      from += 32
    }
  }
}
