import type { CodePicture } from './kernel.ts'
import type { KernelState } from './kernelState.ts'
import { bandsOf } from './sourceRows.ts'

/** Levels of a waveform column: four 10-bit codes each. */
const LEVELS = 256
const BAND_SAMPLES = 65_536

/** See `Kernel.lumaWaveform`. */
export const lumaWaveform = (
  { module, memory }: KernelState,
  { width, height, y }: CodePicture,
  columns: number,
  into?: Uint32Array,
): Uint32Array => {
  const size = columns * LEVELS
  const out = into?.length === size ? into : new Uint32Array(size)
  const rows = Math.max(1, Math.floor(BAND_SAMPLES / Math.max(1, width)))
  const space = memory()
  const counters = space.take(size * 4)
  const starts = space.take(width * 4)
  const luma = space.take(Math.min(rows, height) * width * 2)
  const buffer = space.settle()
  const counts = new Uint32Array(buffer, counters, size).fill(0)
  new Uint32Array(buffer, starts, width).forEach((_, x, addresses) => {
    addresses[x] = counters + Math.floor((x * columns) / width) * LEVELS * 4
  })
  for (const { first, end } of bandsOf(height, rows)) {
    const codes = y.subarray(first * width, end * width)
    new Uint16Array(buffer, luma, codes.length).set(codes)
    module.countWaveform(luma, width, end - first, starts)
  }
  out.set(counts)
  return out
}
