import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { lineOfText, readXml } from '../../../src/core/base/xmlReader.ts'
import {
  isXmlText,
  writeXml,
  writeXmlAround,
  writeXmlInside,
} from '../../../src/core/base/xmlWriter.ts'

/** ASCII, control characters, and characters of one and two UTF-16 units; half ones too. */
const anyText = fc.oneof(
  fc.string(),
  fc
    .array(
      fc.constantFrom(
        'a',
        ' ',
        '\r',
        '\n',
        '\t',
        '<',
        ']]>',
        '&',
        '"',
        '\u0001',
        'é',
        '−',
        '😀',
        '\ud800',
        '\ufffe',
      ),
    )
    .map((parts) => parts.join('')),
)

describe('XML', () => {
  it('brings back any text and attribute that XML can carry', () => {
    fc.assert(
      fc.property(anyText, fc.oneof(anyText, fc.string()), (inside, value) => {
        const read = readXml(writeXml({ name: 'a', attributes: { value }, inside }))
        if (!read.ok) throw new Error(read.problems[0].says)
        if (isXmlText(inside)) expect(read.value.text).toBe(inside)
        if (isXmlText(value)) expect(read.value.attributes.get('value')).toBe(value)
      }),
      { seed: 1, numRuns: 500 },
    )
  })

  it('is written by lines, elements inside indented by two spaces', () => {
    const inside = [{ name: 'b', inside: 'c' }, { name: 'd' }]
    expect(writeXml({ name: 'a', inside })).toBe(
      '<?xml version="1.0" encoding="UTF-8"?>\n<a>\n  <b>c</b>\n  <d/>\n</a>\n',
    )
  })

  it('is the same written whole and in parts', () => {
    const root = { name: 'a', attributes: { b: '1' } }
    const inside = [{ name: 'c', inside: [{ name: 'd', inside: '<' }] }, { name: 'e' }]
    const parts = [writeXmlInside(inside.slice(0, 1)), writeXmlInside(inside.slice(1))]
    expect(writeXmlAround(root, parts)).toBe(writeXml({ ...root, inside }))
  })

  it('writes what it cannot carry as the replacement character', () => {
    expect(isXmlText('a\u0000b\ud800')).toBe(false)
    const read = readXml(writeXml({ name: 'a', inside: 'a\u0000b\ud800' }))
    expect(read.ok && read.value.text).toBe('a\ufffdb\ufffd')
  })

  it.each([
    [32, true],
    [33, false],
  ])('elements %i deep: %s', (depth, isRead) => {
    const read = readXml('<a>'.repeat(depth) + '</a>'.repeat(depth))
    expect(read.ok).toBe(isRead)
  })

  it('of more than 32 MB is refused before it is looked at', () => {
    const read = readXml(`<a>${'x'.repeat(32 * 2 ** 20)}</a>`)
    expect(!read.ok && read.problems[0].code).toBe('too-large')
  })

  it('of more than a million elements is refused, with the line', () => {
    const read = readXml(`<a>\n${'<b/>'.repeat(1_000_001)}</a>`)
    expect(!read.ok && read.problems[0]).toMatchObject({ code: 'malformed', at: { line: 2 } })
  })

  it('tells the line of any character of a text, whatever stands between its parts', () => {
    const read = readXml('<a\n>1\n2<!-- \n\n -->3\n4<b>\n</b>\n5<![CDATA[\n6]]>\n7</a>')
    if (!read.ok) throw new Error(read.problems[0].says)
    const lines = [...'1234567'].map((digit) =>
      lineOfText(read.value, read.value.text.indexOf(digit)),
    )
    expect(lines).toEqual([2, 3, 5, 6, 8, 9, 10])
  })

  it('tells namespace, and line and column of what is broken', () => {
    const read = readXml('<a xmlns="urn:x"><b xmlns="urn:y"/></a>')
    expect(read.ok && [read.value.namespace, read.value.children[0]?.namespace]).toEqual([
      'urn:x',
      'urn:y',
    ])
    const broken = readXml('<a>\n  <b></c>\n</a>')
    expect(!broken.ok && broken.problems[0].at).toEqual({ line: 2, column: 9 })
  })
})
