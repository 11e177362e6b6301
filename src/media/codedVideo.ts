/** A coded picture: `at` is its place in the file, from 0. */
export type CodedPicture = {
  readonly at: number
  readonly isKey: boolean
  readonly data: Uint8Array<ArrayBuffer>
}

/** A run of coded pictures that begins with a key picture and needs none outside it. */
export type CodedVideo = {
  /** The codec as WebCodecs names it, with profile and level. */
  readonly codec: string
  /** What a decoder must know first, where the codec has that apart (ISO/IEC 14496-15 of H.264). */
  readonly description: Uint8Array<ArrayBuffer> | undefined
  readonly pictures: readonly CodedPicture[]
}

type Listed = {
  readonly codec: string
  readonly description: number
  readonly pictures: readonly { at: number; isKey: boolean; bytes: number }[]
}

const LENGTH_BYTES = 4

/** One file of coded video: the length of a list (32 bits, little-endian), the list, the bytes. */
export const packCodedVideo = ({ codec, description, pictures }: CodedVideo): Blob => {
  const listed: Listed = {
    codec,
    description: description?.length ?? 0,
    pictures: pictures.map(({ at, isKey, data }) => ({ at, isKey, bytes: data.length })),
  }
  const list = new TextEncoder().encode(JSON.stringify(listed))
  const length = new DataView(new ArrayBuffer(LENGTH_BYTES))
  length.setUint32(0, list.length, true)
  return new Blob([length.buffer, list, description ?? '', ...pictures.map(({ data }) => data)])
}

/** The coded video of a file by `packCodedVideo`, whose checksum was found to be right. */
export const unpackCodedVideo = (bytes: Uint8Array<ArrayBuffer>): CodedVideo => {
  const length = new DataView(bytes.buffer, bytes.byteOffset).getUint32(0, true)
  let from = LENGTH_BYTES + length
  const list = new TextDecoder().decode(bytes.subarray(LENGTH_BYTES, from))
  const { codec, description, pictures } = JSON.parse(list) as Listed
  const take = (count: number): Uint8Array<ArrayBuffer> => {
    from += count
    return bytes.subarray(from - count, from)
  }
  return {
    codec,
    description: description > 0 ? take(description) : undefined,
    pictures: pictures.map(({ at, isKey, bytes: count }) => ({ at, isKey, data: take(count) })),
  }
}
