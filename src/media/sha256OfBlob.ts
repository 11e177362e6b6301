import { createSha256 } from '../core/base/sha256.ts'

/** Bytes read at once: a small part of a second's work, so that stopping is prompt. */
const CHUNK = 4 * 2 ** 20

/**
 * The checksum of a file or blob of any size, read piece by piece. `onBytes` is told how many are
 * done. Rejects with the signal's reason when it is stopped.
 */
export const sha256OfBlob = async (
  blob: Blob,
  onBytes: (done: number) => void = () => {},
  signal?: AbortSignal,
): Promise<string> => {
  const hash = createSha256()
  for (let from = 0; from < blob.size; from += CHUNK) {
    signal?.throwIfAborted()
    const piece = await blob.slice(from, from + CHUNK).arrayBuffer()
    hash.add(new Uint8Array(piece))
    onBytes(Math.min(from + CHUNK, blob.size))
  }
  return hash.digest()
}
