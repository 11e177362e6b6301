import { sha256 } from '@noble/hashes/sha2.js'
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js'

/** A checksum that grows: bytes are added in any number of pieces. */
export type Sha256 = {
  readonly add: (bytes: Uint8Array) => void
  /** 64 hexadecimal digits; nothing can be added after. */
  readonly digest: () => string
}

/** SHA-256 (FIPS 180-4) of bytes as they come. */
export const createSha256 = (): Sha256 => {
  const hash = sha256.create()
  return {
    add: (bytes) => void hash.update(bytes),
    digest: () => bytesToHex(hash.digest()),
  }
}

/** The checksum of a text as its file holds it, in UTF-8. */
export const sha256OfText = (text: string): string => bytesToHex(sha256(utf8ToBytes(text)))

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
