import type { Samples } from '../core/picture/planes.ts'

/** Copies samples `first` up to `end` to an address of kernel memory. */
export const copySamples = (
  buffer: ArrayBuffer,
  address: number,
  samples: Samples,
  first: number,
  end: number,
): void => {
  const part = samples.subarray(first, end)
  const to =
    samples instanceof Uint16Array
      ? new Uint16Array(buffer, address, part.length)
      : new Uint8Array(buffer, address, part.length)
  to.set(part)
}
