/** Bytes → a stream of ISO/IEC 15948 §10.1 (RFC 1950, RFC 1951). The same bytes for the same. */
export type Deflate = (bytes: Uint8Array<ArrayBuffer>) => Promise<Uint8Array<ArrayBuffer>>

/** By what every browser has, and Node. */
export const deflateByStream: Deflate = async (bytes) => {
  const stream = new Blob([bytes]).stream().pipeThrough(new CompressionStream('deflate'))
  return new Uint8Array(await new Response(stream).arrayBuffer())
}
