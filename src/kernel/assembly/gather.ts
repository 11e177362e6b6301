import { statistics } from './levelSettings'

/** Takes the lows and highs of a figure, four lanes each, into the statistics. */
// @ts-ignore: decorator
@inline
export function gatherEnds(figure: usize, low: v128, high: v128): void {
  const at = statistics + (figure << 5)
  v128.store(at, f32x4.pmin(v128.load(at), low))
  v128.store(at, f32x4.pmax(v128.load(at, 16), high), 16)
}

/** Adds counts of pixels below, above, and outside, four lanes each, to the statistics. */
// @ts-ignore: decorator
@inline
export function gatherCounts(below: v128, above: v128, outside: v128): void {
  const at = statistics + 160
  v128.store(at, i32x4.add(v128.load(at), below))
  v128.store(at, i32x4.add(v128.load(at, 16), above), 16)
  v128.store(at, i32x4.add(v128.load(at, 32), outside), 32)
}
