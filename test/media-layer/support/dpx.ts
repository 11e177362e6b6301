/** How a DPX picture for a test is laid. */
export type DpxForm = {
  readonly width: number
  readonly height: number
  readonly depth: 8 | 10 | 12 | 16
  /** 0 packed, 1 filled by method A, 2 by method B. */
  readonly packing: 0 | 1 | 2
  readonly descriptor: 6 | 50 | 51 | 52
  readonly isLittleEndian?: boolean
  readonly orientation?: number
  readonly linePadding?: number
  /** Where samples begin, 2048 or more. */
  readonly dataOffset?: number
  readonly isUnaligned?: boolean
  readonly transfer?: number
}

export const channelsOf = ({ descriptor }: DpxForm): 1 | 3 | 4 =>
  descriptor === 6 ? 1 : descriptor === 50 ? 3 : 4

const bitsOf = (value: number, count: number): string => value.toString(2).padStart(count, '0')

/**
 * A line's samples as the bytes of big-endian words, written as strings of bits: slow, and sharing
 * nothing with the reader that is tested.
 */
const lineBytes = (samples: readonly number[], form: DpxForm): readonly number[] => {
  const { depth, packing, descriptor } = form
  const words: string[] = []
  if (depth === 8) words.push(...samples.map((sample) => bitsOf(sample, 8)))
  else if (depth === 16) words.push(...samples.map((sample) => bitsOf(sample, 16)))
  else if (packing === 0) {
    // The first sample lies in the lowest bits: the bits of all, from the last to the first.
    const all = samples
      .toReversed()
      .map((sample) => bitsOf(sample, depth))
      .join('')
    const whole = all.padStart(32 * Math.ceil(all.length / 32), '0')
    for (let end = whole.length; end > 0; end -= 32) words.push(whole.slice(end - 32, end))
  } else if (depth === 12)
    words.push(
      ...samples.map((sample) => {
        const bits = bitsOf(sample, 12)
        return packing === 1 ? `${bits}0000` : `0000${bits}`
      }),
    )
  else
    for (let from = 0; from < samples.length; from += 3) {
      const three = [0, 1, 2].map((i) => bitsOf(samples[from + i] ?? 0, 10))
      const bits = (descriptor === 6 ? three.toReversed() : three).join('')
      words.push(packing === 1 ? `${bits}00` : `00${bits}`)
    }
  const bytes = words.flatMap((word) => {
    const each = (word.match(/.{8}/gu) ?? []).map((bits) => Number.parseInt(bits, 2))
    return form.isLittleEndian ? each.toReversed() : each
  })
  while (!form.isUnaligned && bytes.length % 4 !== 0) bytes.push(0)
  for (let i = 0; i < (form.linePadding ?? 0); i++) bytes.push(0xaa)
  return bytes
}

/** A DPX file of samples in the order they lie in: line by line, pixel by pixel. */
export const dpxOf = (samples: readonly number[], form: DpxForm): Uint8Array<ArrayBuffer> => {
  const { width, height, isLittleEndian = false, dataOffset = 2048 } = form
  const perLine = width * channelsOf(form)
  const lines = Array.from({ length: height }, (_, y) =>
    lineBytes(samples.slice(y * perLine, (y + 1) * perLine), form),
  )
  const data = lines.flat()
  const bytes = new Uint8Array(dataOffset + data.length)
  bytes.fill(0xff, 0, 2048)
  bytes.set(data, dataOffset)
  const view = new DataView(bytes.buffer)
  const u16 = (at: number, value: number) => view.setUint16(at, value, isLittleEndian)
  const u32 = (at: number, value: number) => view.setUint32(at, value, isLittleEndian)
  u32(0, 0x53445058)
  u32(4, dataOffset)
  bytes.set(new TextEncoder().encode('V2.0\0\0\0\0'), 8)
  u32(16, bytes.length)
  u16(768, form.orientation ?? 0)
  u16(770, 1)
  u32(772, width)
  u32(776, height)
  u32(780, 0)
  bytes[800] = form.descriptor
  bytes[801] = form.transfer ?? 6
  bytes[802] = 6
  bytes[803] = form.depth
  u16(804, form.packing)
  u16(806, 0)
  u32(808, dataOffset)
  u32(812, form.linePadding ?? 0)
  return bytes
}

/** Sets whole numbers of a DPX file's header, by their bytes, in its byte order. */
export const withFields = (
  bytes: Uint8Array<ArrayBuffer>,
  fields: readonly (readonly [at: number, size: 1 | 2 | 4, value: number])[],
): Uint8Array<ArrayBuffer> => {
  const copy = bytes.slice()
  const isLittleEndian = copy[0] === 0x58
  const view = new DataView(copy.buffer)
  for (const [at, size, value] of fields)
    if (size === 1) view.setUint8(at, value)
    else if (size === 2) view.setUint16(at, value, isLittleEndian)
    else view.setUint32(at, value, isLittleEndian)
  return copy
}
