import { bytesToHex, hexToBytes, utf8ToBytes } from '@noble/hashes/utils.js'
import type { SigningAlgorithm } from './answer.ts'
import { type HostKey, type Subtle, subtleHere } from './webCrypto.ts'

/** What answers are signed with: the private key as PKCS #8, in hexadecimal digits. */
export type PrivateKey = { readonly algorithm: SigningAlgorithm; readonly privateKey: string }

/** What signatures are checked with: the raw public key, in hexadecimal digits. */
export type PublicKey = { readonly algorithm: SigningAlgorithm; readonly publicKey: string }

/** How keys of each kind are made and signatures reckoned (W3C Web Cryptography API). */
const KINDS = {
  Ed25519: { key: { name: 'Ed25519' }, signing: { name: 'Ed25519' } },
  'P-256': {
    key: { name: 'ECDSA', namedCurve: 'P-256' },
    signing: { name: 'ECDSA', hash: 'SHA-256' },
  },
} as const

const bytesOf = (hex: string): Uint8Array<ArrayBuffer> => Uint8Array.from(hexToBytes(hex))

/** UTF-8. */
const textBytes = (text: string): Uint8Array<ArrayBuffer> => Uint8Array.from(utf8ToBytes(text))

const madeKey = async (
  subtle: Subtle,
  algorithm: SigningAlgorithm,
): Promise<PrivateKey & PublicKey> => {
  const pair = await subtle.generateKey(KINDS[algorithm].key, true, ['sign', 'verify'])
  const hex = async (format: 'raw' | 'pkcs8', key: HostKey): Promise<string> =>
    bytesToHex(new Uint8Array(await subtle.exportKey(format, key)))
  return {
    algorithm,
    publicKey: await hex('raw', pair.publicKey),
    privateKey: await hex('pkcs8', pair.privateKey),
  }
}

/**
 * A new pair of keys: for Ed25519 (RFC 8032) where this platform has it, else for ECDSA on P-256
 * with SHA-256 (FIPS 186-5); undefined where it can sign nothing.
 */
export const makeSigningKey = async (): Promise<(PrivateKey & PublicKey) | undefined> => {
  const subtle = subtleHere()
  if (!subtle) return undefined
  return madeKey(subtle, 'Ed25519').catch(() => madeKey(subtle, 'P-256').catch(() => undefined))
}

/** The signature of a text in UTF-8, as hexadecimal digits; undefined where this platform cannot. */
export const signText = async (
  { algorithm, privateKey }: PrivateKey,
  text: string,
): Promise<string | undefined> => {
  const subtle = subtleHere()
  if (!subtle) return undefined
  const { key, signing } = KINDS[algorithm]
  try {
    const made = await subtle.importKey('pkcs8', bytesOf(privateKey), key, false, ['sign'])
    return bytesToHex(new Uint8Array(await subtle.sign(signing, made, textBytes(text))))
  } catch {
    return undefined
  }
}

/** Whether a signature is of this text by the key; undefined where this platform cannot tell. */
export const verifyText = async (
  { algorithm, publicKey }: PublicKey,
  text: string,
  signature: string,
): Promise<boolean | undefined> => {
  const subtle = subtleHere()
  if (!subtle) return undefined
  const { key, signing } = KINDS[algorithm]
  try {
    const made = await subtle.importKey('raw', bytesOf(publicKey), key, false, ['verify'])
    return await subtle.verify(signing, made, bytesOf(signature), textBytes(text))
  } catch {
    return undefined
  }
}
