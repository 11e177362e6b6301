import { vectorscopeCounters } from './bandCounters.ts'
import type { CodePicture } from './kernel.ts'
import type { KernelState } from './kernelState.ts'
import { bandsOf } from './sourceRows.ts'

const BAND_SAMPLES = 65_536

/** See `Kernel.vectorscope`. */
export const vectorscope = (
  { module, memory }: KernelState,
  { width, height, cb, cr }: CodePicture,
  size: number,
  into?: Uint32Array<ArrayBuffer>,
): Uint32Array<ArrayBuffer> => {
  const rows = Math.max(1, Math.floor(BAND_SAMPLES / Math.max(1, width)))
  const space = memory()
  const cbBand = space.take(Math.min(rows, height) * width * 2)
  const crBand = space.take(Math.min(rows, height) * width * 2)
  const planes = { cb: () => cbBand, cr: () => crBand }
  const counters = vectorscopeCounters(module, planes, width, size)
  counters.take(space)
  const buffer = space.settle()
  counters.begin(buffer)
  for (const { first, end } of bandsOf(height, rows)) {
    const [from, to] = [first * width, end * width]
    new Uint16Array(buffer, cbBand, to - from).set(cb.subarray(from, to))
    new Uint16Array(buffer, crBand, to - from).set(cr.subarray(from, to))
    counters.add(end - first)
  }
  return counters.counts(into)
}
