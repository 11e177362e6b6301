import type { CodePicture } from './kernel.ts'
import type { KernelState } from './kernelState.ts'
import { bandsOf } from './sourceRows.ts'

const BAND_SAMPLES = 65_536

/** See `Kernel.vectorscope`. */
export const vectorscope = (
  { module, memory }: KernelState,
  { cb, cr }: CodePicture,
  size: number,
  into?: Uint32Array,
): Uint32Array => {
  const out = into?.length === size * size ? into : new Uint32Array(size * size)
  const space = memory()
  const counters = space.take(size * size * 4)
  const cbBand = space.take(BAND_SAMPLES * 2)
  const crBand = space.take(BAND_SAMPLES * 2)
  const buffer = space.settle()
  const counts = new Uint32Array(buffer, counters, size * size).fill(0)
  for (const { first, end } of bandsOf(cb.length, BAND_SAMPLES)) {
    new Uint16Array(buffer, cbBand, end - first).set(cb.subarray(first, end))
    new Uint16Array(buffer, crBand, end - first).set(cr.subarray(first, end))
    module.countVectorscope(cbBand, crBand, end - first, size, counters)
  }
  out.set(counts)
  return out
}
