import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { readXml } from '../../../src/core/base/xmlReader.ts'
import { readCdlList } from '../../../src/core/formats/cdl/readCdlList.ts'

const refusal = (text: string) => {
  const read = readXml(text)
  if (read.ok) throw new Error('read')
  return read.problems[0]
}

describe('an “&” that stands for itself', () => {
  it('is named by its line in a list, however far behind it the reading stumbles', () => {
    const list = readCdlList(
      `<ColorCorrectionCollection xmlns="urn:ASC:CDL:v1.2">
  <ColorCorrection id="a">
    <Description>Day & night</Description>
    <SatNode>
      <Saturation>1</Saturation>
    </SatNode>
  </ColorCorrection>
</ColorCorrectionCollection>
`,
      undefined,
    )
    expect(!list.ok && list.problems[0]).toMatchObject({
      says: 'This XML cannot be read: an “&” in line 3 must be written “&amp;”.',
      at: { line: 3, column: 22 },
    })
  })

  it.each([
    ['in an attribute', '<a>\n<b c="d&e"/></a>', 2, 8],
    ['before a later semicolon', '<a>\n&lt;\n\nA & B\n;</a>', 4, 3],
    ['with nothing behind it', '<a>\r\n\r\n&;</a>', 3, 1],
    ['as half a number', '<a>\r&#x;</a>', 2, 1],
    ['behind comments, CDATA and instructions', '<a><!-- & --><![CDATA[&]]><?b &?>\n&</a>', 2, 1],
    ['at the end', '<a>\n</a>&', 2, 5],
  ])('is named %s', (_, text, line, column) => {
    const { says, at } = refusal(text)
    expect(at).toEqual({ line, column })
    expect(says).toContain(`line ${line} must be written “&amp;”`)
  })

  it.each([
    ['in a comment', '<a>\n<!-- & --><b></c></a>'],
    ['in CDATA', '<a>\n<![CDATA[ & ]]><b></c></a>'],
    ['in an instruction', '<a>\n<?x & ?><b></c></a>'],
    ['as a reference', '<a>\n&amp;&#38;&#x26;&#0038;<b></c></a>'],
    ['behind what is wrong', '<a>\n<b></c> & </a>'],
  ])('is not blamed %s', (_, text) => {
    const { says, at } = refusal(text)
    expect(at?.line).toBe(2)
    expect(says).toContain('close the inner one first')
  })

  it('is not blamed for a document type declaration', () => {
    expect(refusal('<!DOCTYPE a [<!ENTITY b "c & d">]>\n<a/>').says).toContain('document type')
  })

  it('among what is right is found wherever it stands', () => {
    const part = fc.constantFrom('a', '\n', '\r\n', '&amp;', '&#65;', '<b c="&lt;"/>', '<!--&-->')
    const parts = fc.array(part, { maxLength: 12 }).map((each) => each.join(''))
    fc.assert(
      fc.property(parts, parts, (before, after) => {
        const text = `<a>${before}& ${after}</a>`
        const lines = `<a>${before}`.split(/\r\n|\n/u)
        expect(refusal(text).at).toEqual({
          line: lines.length,
          column: (lines.at(-1)?.length ?? 0) + 1,
        })
      }),
      { seed: 1, numRuns: 300 },
    )
  })
})

describe('what is wrong with XML is said in plain words', () => {
  it.each([
    ['<a>\n<b><c/>', 'the element “b” opened in line 2 is never closed'],
    ['<a\n>', 'the element “a” opened in line 2 is never closed'],
    ['<a>\n<b></c></a>', 'closed while one inside it is open'],
    ['<a>\n<b:c/></a>', 'the prefix “b” has no namespace'],
    ['<a>\n<c b:d="1"/></a>', 'the prefix “b” has no namespace'],
    ['<a>\n&nbsp;</a>', 'an entity is not known here'],
    ['<a>\n&#0;</a>', 'the number of a character'],
    ['<a>\n<b c="1" c="2"/></a>', 'the attribute “c” stands twice'],
    ['<a xmlns:x="u" xmlns:y="u">\n<b x:c="1" y:c="2"/></a>', 'the attribute “c” stands twice'],
    ['<a>\n<b c/></a>', 'an attribute is broken'],
    ['<a>\n<b c></b></a>', 'an attribute has no value'],
    ['<a>\n<b,c/></a>', 'an element’s name'],
    ['<a>\n</b></a>', 'closed while one inside it is open'],
    ['<a/>\n</b>', '“b” is closed but not open'],
    ['<a>\n</></a>', 'an end tag has no name'],
    ['\n<?xml version="1.0"?><a/>', 'the XML declaration'],
    ['<a>\n<b c=1/></a>', 'put it in quotes'],
    ['<a>\n<b c="1"d="2"/></a>', 'run together'],
    ['<a>\n1 < 2</a>', 'write it as “&lt;”'],
    ['<a>\n\u0001</a>', 'XML does not allow'],
    ['<a/>\nb', 'outside the first element'],
    ['<a/>\n<b/>', 'a second element'],
    ['<a>\n<!-- -- --></a>', 'a comment'],
    ['<a>\n]]></a>', '“]]&gt;”'],
  ])('%j', (text, words) => {
    const { says, at } = refusal(text)
    expect(at?.line).toBe(2)
    expect(says).toMatch(/^This XML cannot be read: [^.]*[^.]\.$/u)
    expect(says).toContain(words)
  })

  it('with long names cut', () => {
    expect(refusal(`<${'a'.repeat(1000)}>`).says.length).toBeLessThan(200)
  })
})
