import { createHash } from 'node:crypto'
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { createSha256, sha256OfText } from '../../src/core/base/sha256.ts'
import { filesChecksum } from '../../src/media/filesChecksum.ts'
import { sha256OfFile } from '../../src/media/node/sha256OfFile.ts'
import { sha256OfBlob } from '../../src/media/sha256OfBlob.ts'

/** The examples of FIPS 180-4 for SHA-256 (its example values; the empty message: NIST CAVP). */
const EXAMPLES = [
  ['', 'e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855'],
  ['abc', 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad'],
  [
    'abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq',
    '248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1',
  ],
  ['a'.repeat(1_000_000), 'cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0'],
] as const

const ofNode = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex')

describe('SHA-256', () => {
  it.each(EXAMPLES)('is that of the standard’s examples', async (text, expected) => {
    expect(sha256OfText(text)).toBe(expected)
    expect(await sha256OfBlob(new Blob([text]))).toBe(expected)
  })

  it('is the same however the bytes are cut, and the same as Node’s', () => {
    fc.assert(
      fc.property(fc.array(fc.uint8Array({ maxLength: 200 }), { maxLength: 8 }), (pieces) => {
        const hash = createSha256()
        for (const piece of pieces) hash.add(piece)
        expect(hash.digest()).toBe(ofNode(Buffer.concat(pieces)))
      }),
      { seed: 1, numRuns: 200 },
    )
  })

  it('of a file is that of a blob of its bytes, with every byte told', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'reelwright-sha-'))
    const bytes = Uint8Array.from({ length: 9 * 2 ** 20 + 5 }, (_, i) => (i * 31) >> 3)
    try {
      writeFileSync(join(folder, 'scan'), bytes)
      const told: number[] = []
      const ofBlob = await sha256OfBlob(new Blob([bytes]), (done) => told.push(done))
      let last = 0
      const ofFile = await sha256OfFile(join(folder, 'scan'), (done) => {
        last = done
      })
      expect(ofBlob).toBe(ofNode(bytes))
      expect(ofFile).toBe(ofBlob)
      expect(told).toEqual([4 * 2 ** 20, 8 * 2 ** 20, bytes.length])
      expect(last).toBe(bytes.length)
    } finally {
      rmSync(folder, { recursive: true })
    }
  })

  it('of a blob stops when it is told to', async () => {
    const stop = new AbortController()
    const bytes = new Blob([new Uint8Array(12 * 2 ** 20)])
    const told: number[] = []
    const stopped = sha256OfBlob(
      bytes,
      (done) => {
        told.push(done)
        stop.abort()
      },
      stop.signal,
    )
    await expect(stopped).rejects.toThrow(/abort/i)
    expect(told).toHaveLength(1)
  })

  it('of a sequence is that of the list that checksum tools make of it', () => {
    const files = [
      { name: 'b.png', sha256: sha256OfText('b') },
      { name: 'a.png', sha256: sha256OfText('a') },
    ]
    const list = `${sha256OfText('a')}  a.png\n${sha256OfText('b')}  b.png\n`
    expect(filesChecksum(files)).toBe(ofNode(new TextEncoder().encode(list)))
  })
})
