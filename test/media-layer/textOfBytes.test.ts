import { expect, it } from 'vitest'
import { textOfBytes } from '../../src/media/textOfBytes.ts'

const TEXT = 'TITLE: Häfen – 港\r\n'

it('UTF-8 is read as it is, without its byte order mark', () => {
  const bytes = new TextEncoder().encode(TEXT)
  expect(textOfBytes(bytes)).toEqual({ text: TEXT, told: [] })
  expect(textOfBytes(new TextEncoder().encode(`\ufeff${TEXT}`))).toEqual({ text: TEXT, told: [] })
})

it('UTF-16 of either order is read where its mark says so', () => {
  const codes = [...TEXT].map((letter) => letter.charCodeAt(0))
  const little = Uint8Array.from([0xff, 0xfe, ...codes.flatMap((code) => [code & 255, code >> 8])])
  const big = Uint8Array.from([0xfe, 0xff, ...codes.flatMap((code) => [code >> 8, code & 255])])
  expect(textOfBytes(little)).toEqual({ text: TEXT, told: [] })
  expect(textOfBytes(big)).toEqual({ text: TEXT, told: [] })
})

it('anything else is read as Windows-1252, and that is told', () => {
  const read = textOfBytes(Uint8Array.of(0x48, 0xe4, 0x66, 0x65, 0x6e, 0x20, 0x80))
  expect(read.text).toBe('Häfen €')
  expect(read.told[0]?.says).toContain('Windows-1252')
})
