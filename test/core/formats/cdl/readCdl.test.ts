import { readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import { describe, expect, it } from 'vitest'
import { readCdl } from '../../../../src/core/formats/cdl/readCdl.ts'

const MEDIA = resolve(import.meta.dirname, '../../../media/interchange/cdl')
const open = (name: string) => readCdl(readFileSync(`${MEDIA}/${name}`, 'utf8'))

describe('ASC CDL files', () => {
  it.each(['cdl_test1.ccc', 'cdl_test1.cc', 'cdl_test2.cc', 'cdl_test1.cdl'])(
    'reads %s, written by others',
    (name) => {
      const read = open(name)
      expect(read.ok ? read.value.corrections.length : 0).toBeGreaterThan(0)
    },
  )

  it('reads the values of cdl_test1.ccc', () => {
    const read = open('cdl_test1.ccc')
    if (!read.ok) throw new Error(read.problems[0].says)
    expect(read.value.corrections[0]?.id).toBe('cc0001')
    expect(read.value.corrections[0]?.cdl).toEqual({
      slope: [1, 1, 0.9],
      offset: [-0.03, -0.02, 0],
      power: [1.25, 1, 1],
      saturation: 1.7,
    })
  })

  it('reads every decision of cdl_test1.cdl, what is said of it level by level', () => {
    const read = open('cdl_test1.cdl')
    if (!read.ok) throw new Error(read.problems[0].says)
    expect(read.value.corrections.map(({ id }) => id)).toEqual([
      'cc0001',
      'cc0002',
      'cc0003',
      '',
      '',
    ])
    const word = (name: string, text: string) => ({ name, text })
    expect(read.value.corrections[1]?.words).toEqual({
      id: 'cc0002',
      mediaRefs: ['some/Project/image.dpx'],
      decision: [
        word('Description', 'ColorDecision-level description 2a'),
        word('Description', 'ColorDecision-level description 2b'),
        word('InputDescription', 'ColorDecision-level input description 2'),
        word('ViewingDescription', 'ColorDecision-level viewing description 2'),
      ],
      correction: [
        word('Description', 'CC-level description 2'),
        word('InputDescription', 'CC-level input description 2'),
        word('ViewingDescription', 'CC-level viewing description 2'),
      ],
      sop: [word('Description', 'pastel'), word('Description', 'another example')],
      sat: [word('Description', 'dropping sat')],
    })
    expect(read.value.words.map(({ name }) => name)).toEqual([
      'Description',
      'InputDescription',
      'ViewingDescription',
      'Description',
    ])
    expect(read.value.notTaken).toEqual([])
    expect(read.value.corrections[3]?.cdl).toEqual({
      slope: [1.2, 1.1, 1],
      offset: [0, 0, 0],
      power: [0.9, 1, 1.2],
      saturation: 1,
    })
    expect(read.value.corrections[4]?.cdl.saturation).toBe(0)
  })

  it.each(['urn:ASC:CDL:v1.01', 'urn:ASC:CDL:v1.2', ''])(
    'are read in the namespace “%s”, and prefixed as well as not',
    (namespace) => {
      const inside = '<SATNode><Saturation>0.5</Saturation></SATNode>'
      const plain = readCdl(
        `<ColorCorrection xmlns="${namespace}" id="a">${inside}</ColorCorrection>`,
      )
      expect(plain.ok && plain.value.corrections[0]?.cdl.saturation).toBe(0.5)
      if (namespace === '') return
      const prefixed = readCdl(
        `<a:ColorCorrection xmlns:a="${namespace}" id="a" xml:id="other"><a:SatNode><a:Saturation>.25</a:Saturation></a:SatNode></a:ColorCorrection>`,
      )
      expect(prefixed.ok && prefixed.value.corrections[0]?.cdl.saturation).toBe(0.25)
      expect(prefixed.ok && prefixed.value.corrections[0]?.id).toBe('a')
    },
  )

  it('pass over what others put in, whatever it is called', () => {
    const read = readCdl(
      '<ColorCorrection><x:SatNode xmlns:x="urn:other"><x:Saturation>bad</x:Saturation></x:SatNode><ASC_SAT>3</ASC_SAT></ColorCorrection>',
    )
    expect(read.ok && read.value.corrections[0]?.cdl.saturation).toBe(1)
    expect(read.ok && read.value.notTaken.map(({ says, at }) => [says, at?.line])).toEqual([
      ['SatNode is not known in ColorCorrection and was passed over.', 1],
      ['ASC_SAT is not known in ColorCorrection and was passed over.', 1],
    ])
  })

  it('tell what was not there: a number of a node, a correction of a decision', () => {
    const read = readCdl(`<ColorDecisionList><ColorDecision><ColorCorrection>
<SOPNode><Slope>2 2 2</Slope><Power>1 1 1</Power></SOPNode><SatNode/></ColorCorrection></ColorDecision>
<ColorDecision><MediaRef ref="a"/></ColorDecision></ColorDecisionList>`)
    if (!read.ok) throw new Error(read.problems[0].says)
    expect(read.value.corrections).toHaveLength(1)
    expect(read.value.notTaken.map(({ says, at }) => [says, at?.line])).toEqual([
      ['This ColorDecision has no correction and was passed over.', 3],
      ['SOPNode has no Offset; 0 0 0 was taken.', 2],
      ['SatNode has no Saturation; 1 was taken.', 2],
    ])
  })

  it('are refused where a node or a number stands twice, with the line of the second', () => {
    const read = readCdl(`<ColorCorrection><SOPNode>
<Slope>1 1 1</Slope><Offset>0 0 0</Offset><Power>1 1 1</Power>
<Slope>2 2 2</Slope></SOPNode>
<SatNode><Saturation>1</Saturation></SatNode>
<SATNode><Saturation>1</Saturation></SATNode></ColorCorrection>`)
    expect(!read.ok && read.problems.map(({ code, at }) => [code, at?.line])).toEqual([
      ['conflict', 5],
      ['conflict', 3],
    ])
  })

  it('name the line of a number, in a text of several lines and behind comments', () => {
    const read = readCdl(`<ColorCorrection><SOPNode><Slope>
  1 <!-- red
  --> 1
  one</Slope></SOPNode></ColorCorrection>`)
    expect(!read.ok && read.problems[0].at).toEqual({ line: 4, field: 'Slope' })
    const power = readCdl(
      '<ColorCorrection><SOPNode>\n<Slope>1 1 1</Slope>\n<Power>1 0 1</Power></SOPNode></ColorCorrection>',
    )
    expect(!power.ok && power.problems[0]).toMatchObject({ code: 'out-of-range', at: { line: 3 } })
  })

  it('of many references are read in time that grows with their number', () => {
    const count = 20_000
    const decision = (inside: string) => `<ColorDecision>${inside}</ColorDecision>`
    const own = Array.from({ length: count }, (_, i) => decision(`<ColorCorrection id="c${i}"/>`))
    const others = Array.from({ length: count }, (_, i) =>
      decision(`<ColorCorrectionRef ref="c${i}"/>`),
    )
    const read = readCdl(`<ColorDecisionList>${[...own, ...others].join('')}</ColorDecisionList>`)
    expect(read.ok && read.value.corrections).toHaveLength(2 * count)
  })

  it('follow a decision’s reference to a correction of the file', () => {
    const decisions = (more: string) =>
      `<ColorDecisionList><ColorDecision><ColorCorrection id="a"><SatNode><Saturation>0.5</Saturation></SatNode></ColorCorrection></ColorDecision>
<ColorDecision><Description>again</Description><ColorCorrectionRef ref="a"/></ColorDecision>${more}</ColorDecisionList>`
    const read = readCdl(decisions(''))
    expect(
      read.ok && read.value.corrections.map(({ cdl, line }) => [cdl.saturation, line]),
    ).toEqual([
      [0.5, 1],
      [0.5, 2],
    ])
    expect(read.ok && read.value.corrections[1]?.words.decision).toEqual([
      { name: 'Description', text: 'again' },
    ])
    const astray = readCdl(
      decisions('<ColorDecision><ColorCorrectionRef ref="b"/></ColorDecision>'),
    )
    expect(!astray.ok && astray.problems[0]).toMatchObject({ code: 'not-found', at: { line: 2 } })
    const twice = readCdl(decisions('<ColorDecision><ColorCorrection id="a"/></ColorDecision>'))
    expect(!twice.ok && twice.problems[0].code).toBe('conflict')
    const bad = readCdl(decisions('').replace('0.5', 'x'))
    expect(!bad.ok && bad.problems).toHaveLength(1)
  })

  it('tell line and column of every problem', () => {
    const read = readCdl(`<ColorCorrectionCollection>
  <ColorCorrection><SOPNode>
    <Slope>1 1 x</Slope></SOPNode></ColorCorrection>
  <ColorCorrection><SatNode>
  <Saturation>1 2</Saturation></SatNode></ColorCorrection>
</ColorCorrectionCollection>`)
    expect(!read.ok && read.problems.map(({ at }) => [at?.line, at?.column, at?.field])).toEqual([
      [3, 11, 'Slope'],
      [5, 14, 'Saturation'],
    ])
  })

  it.each([
    [
      'a document type declaration',
      '<!DOCTYPE x [<!ENTITY a "b">]><ColorCorrection/>',
      /document type/u,
    ],
    ['an entity', '<ColorCorrection><SOPNode>&bomb;</SOPNode></ColorCorrection>', /entity/u],
    [
      'power 0',
      '<ColorCorrection><SOPNode><Power>1 0 1</Power></SOPNode></ColorCorrection>',
      /power 0/u,
    ],
    [
      'two slopes',
      '<ColorCorrection><SOPNode><Slope>1 1</Slope></SOPNode></ColorCorrection>',
      /three decimals/u,
    ],
    ['other XML', '<html/>', /not ASC CDL/u],
    ['nothing', '', /.*/u],
    ['a cut file', '<ColorCorrection><SOPNode>', /.*/u],
    ['deep nesting', '<a>'.repeat(200), /deep/u],
  ])('refuses %s, with the line', (_, text, words) => {
    const read = readCdl(text)
    expect(read.ok).toBe(false)
    if (read.ok) return
    expect(read.problems[0].says).toMatch(words)
    expect(read.problems[0].at?.line).toBe(1)
  })
})
