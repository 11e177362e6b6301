import type { ReadAt } from '../readAt.ts'

/** A file, or any bytes with a name. */
export type NamedBlob = Blob & { readonly name: string }

export const blobReader =
  (file: Blob): ReadAt =>
  async (offset, length) =>
    new Uint8Array(await file.slice(offset, offset + length).arrayBuffer())
