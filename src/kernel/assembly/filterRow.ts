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
    let samples = v128.load(from)
    let next = v128.load(from, 16)
    let pairs = plusNext(samples, next)
    samples = next
    next = v128.load(from, 32)
    let nextPairs = plusNext(samples, next)
    let fours = plusSecond(pairs, nextPairs)
    pairs = nextPairs
    samples = next
    next = v128.load(from, 48)
    nextPairs = plusNext(samples, next)
    let nextFours = plusSecond(pairs, nextPairs)
    let paired = plusNext(fours, nextFours)
    fours = nextFours
    pairs = nextPairs
    samples = next
    from += 64
    const start = out + c * rowBytes
    const end = start + size
    for (let to = start; to < end; to += 16) {
      next = v128.load(from)
      nextPairs = plusNext(samples, next)
      nextFours = plusSecond(pairs, nextPairs)
      const nextPaired = plusNext(fours, nextFours)
      v128.store(to, plusSecond(paired, nextPaired))
      samples = next
      pairs = nextPairs
      fours = nextFours
      paired = nextPaired
      from += 16
    }
  }
}
