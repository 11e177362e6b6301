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
