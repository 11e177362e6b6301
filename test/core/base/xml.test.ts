import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { readXml } from '../../../src/core/base/xmlReader.ts'
import { isXmlText, writeXml } from '../../../src/core/base/xmlWriter.ts'

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
      fc.property(anyText, fc.string(), (inside, value) => {
        const read = readXml(writeXml({ name: 'a', attributes: { value }, inside }))
        if (!read.ok) throw new Error(read.problems[0].says)
        if (isXmlText(inside)) expect(read.value.text).toBe(inside)
        expect(read.value.attributes.get('value')).toBe(value)
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

  it('of more than 16 MB is refused before it is looked at', () => {
    const read = readXml(`<a>${'x'.repeat(16 * 2 ** 20)}</a>`)
    expect(!read.ok && read.problems[0].code).toBe('too-large')
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
