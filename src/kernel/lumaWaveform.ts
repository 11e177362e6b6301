import { columnCounters } from './bandCounters.ts'
import type { CodePicture } from './kernel.ts'
import type { KernelState } from './kernelState.ts'
import { bandsOf } from './sourceRows.ts'

/** What a band's codes and its counters need should stay in the cache. */
const BAND_SAMPLES = 131_072

/** See `Kernel.lumaWaveform`. */
export const lumaWaveform = (
  { module, memory }: KernelState,
  { width, height, y }: CodePicture,
  columns: number,
  into?: Uint32Array<ArrayBuffer>,
): Uint32Array<ArrayBuffer> => {
  const rows = Math.max(1, Math.floor(BAND_SAMPLES / Math.max(1, width)))
  const space = memory()
  const luma = space.take(Math.min(rows, height) * width * 2)
  const counters = columnCounters(module, () => luma, width, columns)
  counters.take(space)
  const buffer = space.settle()
  counters.begin(buffer)
  for (const { first, end } of bandsOf(height, rows)) {
    const codes = y.subarray(first * width, end * width)
    new Uint16Array(buffer, luma, codes.length).set(codes)
    counters.add(end - first)
  }
  return counters.counts(into)
}
