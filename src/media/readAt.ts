/** Reads a stretch of a file; fewer bytes where the file ends. */
export type ReadAt = (offset: number, length: number) => Promise<Uint8Array>

export const viewOf = (bytes: Uint8Array): DataView =>
  new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength)
