import { describe, expect, it } from 'vitest'
import { makeSigningKey, signText, verifyText } from '../../../src/core/agreement/signing.ts'

/** The text whose UTF-8 is these bytes; the vectors used here are all of such bytes. */
const textOf = (hex: string): string => new TextDecoder('utf-8', { fatal: true }).decode(bytes(hex))
const bytes = (hex: string): Uint8Array => Uint8Array.from(Buffer.from(hex, 'hex'))

/** RFC 8032 §7.1, the tests whose messages are UTF-8: TEST 1 (empty) and TEST 2 (one byte). */
const RFC_8032 = [
  {
    seed: '9d61b19deffd5a60ba844af492ec2cc44449c5697b326919703bac031cae7f60',
    publicKey: 'd75a980182b10ab7d54bfed3c964073a0ee172f3daa62325af021a68f707511a',
    message: '',
    signature:
      'e5564300c360ac729086e2cc806e828a84877f1eb8e5d974d873e065224901555fb8821590a33bacc61e39701cf9b46bd25bf5f0595bbe24655141438e7a100b',
  },
  {
    seed: '4ccd089b28ff96da9db6c346ec114e0f5b8a319f35aba624da8cf6ed4fb8a6fb',
    publicKey: '3d4017c3e843895a92b70aa74d1b7ebc9c982ccf2ec4968cc0cd55f12af4660c',
    message: '72',
    signature:
      '92a009a9f0d4cab8720e820b5f642540a2b27b5416503f8fb3762223ebdb69da085ac1e43e15996e458f3613d0f11d8c387b2eaeb4302aeeb00d291612bb0c00',
  },
] as const

/** PKCS #8 of an Ed25519 seed (RFC 8410 §7). */
const pkcs8 = (seed: string): string => `302e020100300506032b657004220420${seed}`

describe('Ed25519, RFC 8032 §7.1', () => {
  it.each(RFC_8032)('signs and checks “$message”', async ({ seed, publicKey, ...vector }) => {
    const text = textOf(vector.message)
    const made = await signText({ algorithm: 'Ed25519', privateKey: pkcs8(seed) }, text)
    expect(made).toBe(vector.signature)
    const key = { algorithm: 'Ed25519', publicKey } as const
    expect(await verifyText(key, text, vector.signature)).toBe(true)
    expect(await verifyText(key, `${text}.`, vector.signature)).toBe(false)
    expect(await verifyText(key, text, vector.signature.replace(/^./u, 'a'))).toBe(false)
  })
})

/** RFC 6979 A.2.5: ECDSA on P-256 with SHA-256, message “sample”. */
const RFC_6979 = {
  publicKey:
    '0460fed4ba255a9d31c961eb74c6356d68c049b8923b61fa6ce669622e60f29fb67903fe1008b8bc99a41ae9e95628bc64f2f1b20c2d7e9f5177a3c294d4462299',
  signature:
    'efd48b2aacb6a8fd1140dd9cd45e81d69d2c877b56aaf991c34d0ea84eaf3716f7cb1c942d657c41d436c7a1b6e29f65f3e900dbb9aff4064dc4ab2f843acda8',
} as const

it('checks ECDSA on P-256 with SHA-256, RFC 6979 A.2.5', async () => {
  const key = { algorithm: 'P-256', publicKey: RFC_6979.publicKey } as const
  expect(await verifyText(key, 'sample', RFC_6979.signature)).toBe(true)
  expect(await verifyText(key, 'simple', RFC_6979.signature)).toBe(false)
})

it('makes a pair of keys of which one checks what the other signs', async () => {
  const made = await makeSigningKey()
  if (!made) throw new Error('this platform signs nothing')
  expect(made.algorithm).toBe('Ed25519')
  const signature = await signText(made, 'Söder, 20 %')
  expect(signature).toMatch(/^[0-9a-f]{128}$/u)
  expect(signature && (await verifyText(made, 'Söder, 20 %', signature))).toBe(true)
})

it('says that it cannot tell where the key is none', async () => {
  const key = { algorithm: 'P-256', publicKey: '04'.repeat(65) } as const
  expect(await verifyText(key, 'sample', RFC_6979.signature)).toBeUndefined()
  expect(await signText({ algorithm: 'Ed25519', privateKey: '00' }, 'a')).toBeUndefined()
})
