import { at } from '../core/base/assert.ts'

/** Bytes taken at a step. */
const SLICES = 8

/** What a byte adds to the rest. */
const tableOfBytes = (): Uint32Array => {
  const bitsOf = (byte: number): number => {
    let rest = byte
    for (let bit = 0; bit < 8; bit++) rest = rest & 1 ? (rest >>> 1) ^ 0xedb88320 : rest >>> 1
    return rest
  }
  return Uint32Array.from({ length: 256 }, (_, byte) => bitsOf(byte))
}

/** The same with one more byte after it in the same step. */
const oneFurther = (table: Uint32Array): Uint32Array =>
  table.map((rest) => (rest >>> 8) ^ at(T0, rest & 255))

const T0 = tableOfBytes()
const T1 = oneFurther(T0)
const T2 = oneFurther(T1)
const T3 = oneFurther(T2)
const T4 = oneFurther(T3)
const T5 = oneFurther(T4)
const T6 = oneFurther(T5)
const T7 = oneFurther(T6)

/** The check of a chunk, ISO/IEC 15948 annex D, of the bytes of `parts` one after another. */
export const crc32 = (...parts: readonly Uint8Array[]): number => {
  let rest = 0xffffffff
  for (const bytes of parts) {
    const whole = bytes.length - (bytes.length % SLICES)
    let i = 0
    for (; i < whole; i += SLICES)
      rest =
        at(T7, (at(bytes, i) ^ rest) & 255) ^
        at(T6, (at(bytes, i + 1) ^ (rest >>> 8)) & 255) ^
        at(T5, (at(bytes, i + 2) ^ (rest >>> 16)) & 255) ^
        at(T4, at(bytes, i + 3) ^ (rest >>> 24)) ^
        at(T3, at(bytes, i + 4)) ^
        at(T2, at(bytes, i + 5)) ^
        at(T1, at(bytes, i + 6)) ^
        at(T0, at(bytes, i + 7))
    for (; i < bytes.length; i++) rest = (rest >>> 8) ^ at(T0, (rest ^ at(bytes, i)) & 255)
  }
  return ~rest >>> 0
}
