type Algorithm = { readonly name: string; readonly namedCurve?: string; readonly hash?: string }

/** A key as the platform holds it. */
export type HostKey = { readonly type: string }

/** The part of the Web Cryptography API (W3C) that signing needs. */
export type Subtle = {
  generateKey(
    algorithm: Algorithm,
    isExtractable: boolean,
    uses: readonly string[],
  ): Promise<{ readonly publicKey: HostKey; readonly privateKey: HostKey }>
  exportKey(format: 'raw' | 'pkcs8', key: HostKey): Promise<ArrayBuffer>
  importKey(
    format: 'raw' | 'pkcs8',
    bytes: Uint8Array<ArrayBuffer>,
    algorithm: Algorithm,
    isExtractable: boolean,
    uses: readonly string[],
  ): Promise<HostKey>
  sign(algorithm: Algorithm, key: HostKey, bytes: Uint8Array<ArrayBuffer>): Promise<ArrayBuffer>
  verify(
    algorithm: Algorithm,
    key: HostKey,
    signature: Uint8Array<ArrayBuffer>,
    bytes: Uint8Array<ArrayBuffer>,
  ): Promise<boolean>
}

/** The platform's own cryptography; undefined on pages and hosts that have none. */
export const subtleHere = (): Subtle | undefined =>
  (globalThis as { readonly crypto?: { readonly subtle?: unknown } }).crypto?.subtle as
    | Subtle
    | undefined
