import { readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { gradeToCdl } from '../../../src/core/colour/cdl.ts'
import { readCcc } from '../../../src/core/formats/ccc/readCcc.ts'
import { writeCcc } from '../../../src/core/formats/ccc/writeCcc.ts'
import { exactDecimal } from '../../../src/core/formats/decimal.ts'
import { handOverFiles } from '../../../src/core/formats/handOverFiles.ts'
import { cuesOfReel } from '../../../src/core/job/cueList.ts'
import { says } from '../../support/lossWords.ts'
import { REEL_ID, sampleJob } from '../../support/sampleJob.ts'

const MEDIA = resolve(import.meta.dirname, '../../media/interchange/cdl')
const open = (name: string) => readCcc(readFileSync(`${MEDIA}/${name}`, 'utf8'))

/** Without −0, which text does not tell from 0. */
const number = (min: number, max: number) =>
  fc.double({ min, max, noNaN: true }).map((value) => value + 0)

describe('ASC CDL collections', () => {
  it('carry every grade exactly: what is written is read back to the last bit', () => {
    fc.assert(
      fc.property(
        number(-0.5, 0.5),
        number(0.1, 5),
        number(0.6, 3),
        number(0, 3),
        fc.string(),
        (lift, gamma, gain, saturation, note) => {
          const job = sampleJob([0, 100], (cue) => ({
            ...cue,
            note,
            grade: { lift: [lift, 0, 0.1], gamma: [gamma, 1, 1], gain: [1, gain, 1], saturation },
          }))
          const written = writeCcc(job, REEL_ID)
          if (!written.ok) throw new Error(written.problems[0].says)
          const read = readCcc(written.value.files[0]?.text ?? '')
          if (!read.ok) throw new Error(read.problems[0].says)
          const expected = cuesOfReel(job, REEL_ID).map(({ grade }) => gradeToCdl(grade))
          expect(read.value.map(({ cdl }) => cdl)).toEqual(expected)
          expect(new Set(read.value.map(({ id }) => id)).size).toBe(2)
        },
      ),
      { seed: 1, numRuns: 100 },
    )
  })

  it('name corrections with valid, stable ids and say the cue-in timecode', () => {
    const written = writeCcc(sampleJob(), REEL_ID)
    const text = written.ok ? (written.value.files[0]?.text ?? '') : ''
    expect(text).toContain('<ColorCorrectionCollection xmlns="urn:ASC:CDL:v1.2">')
    expect(text).toContain('<ColorCorrection id="Orlop-reel-1-cue-0002">')
    expect(text).toContain('Cue 2, in at 10:00:04:00')
  })

  it.each(['cdl_test1.ccc', 'cdl_test1.cc', 'cdl_test2.cc', 'cdl_test1.cdl'])(
    'reads %s, written by others',
    (name) => {
      const read = open(name)
      expect(read.ok ? read.value.length : 0).toBeGreaterThan(0)
    },
  )

  it('reads the values of cdl_test1.ccc', () => {
    const read = open('cdl_test1.ccc')
    if (!read.ok) throw new Error(read.problems[0].says)
    expect(read.value[0]?.id).toBe('cc0001')
    expect(read.value[0]?.cdl).toEqual({
      slope: [1, 1, 0.9],
      offset: [-0.03, -0.02, 0],
      power: [1.25, 1, 1],
      saturation: 1.7,
    })
  })

  it('reads every decision of cdl_test1.cdl, its own description first', () => {
    const read = open('cdl_test1.cdl')
    if (!read.ok) throw new Error(read.problems[0].says)
    expect(read.value.map(({ id }) => id)).toEqual([
      'cc0001',
      'cc0002',
      'cc0003',
      undefined,
      undefined,
    ])
    expect(read.value[1]?.descriptions.slice(0, 3)).toEqual([
      'ColorDecision-level description 2a',
      'ColorDecision-level description 2b',
      'ColorDecision-level input description 2',
    ])
    expect(read.value[1]?.descriptions).toContain('dropping sat')
    expect(read.value[3]?.cdl).toEqual({
      slope: [1.2, 1.1, 1],
      offset: [0, 0, 0],
      power: [0.9, 1, 1.2],
      saturation: 1,
    })
    expect(read.value[4]?.cdl.saturation).toBe(0)
  })

  it.each(['urn:ASC:CDL:v1.01', 'urn:ASC:CDL:v1.2', ''])(
    'are read in the namespace “%s”, and prefixed as well as not',
    (namespace) => {
      const inside = '<SATNode><Saturation>0.5</Saturation></SATNode>'
      const plain = readCcc(
        `<ColorCorrection xmlns="${namespace}" id="a">${inside}</ColorCorrection>`,
      )
      expect(plain.ok && plain.value[0]?.cdl.saturation).toBe(0.5)
      if (namespace === '') return
      const prefixed = readCcc(
        `<a:ColorCorrection xmlns:a="${namespace}" id="a" xml:id="other"><a:SatNode><a:Saturation>.25</a:Saturation></a:SatNode></a:ColorCorrection>`,
      )
      expect(prefixed.ok && prefixed.value[0]?.cdl.saturation).toBe(0.25)
      expect(prefixed.ok && prefixed.value[0]?.id).toBe('a')
    },
  )

  it('pass over what others put in, whatever it is called', () => {
    const read = readCcc(
      '<ColorCorrection><x:SatNode xmlns:x="urn:other"><x:Saturation>bad</x:Saturation></x:SatNode><ASC_SAT>3</ASC_SAT></ColorCorrection>',
    )
    expect(read.ok && read.value[0]?.cdl.saturation).toBe(1)
  })

  it('follow a decision’s reference to a correction of the file', () => {
    const decisions = (more: string) =>
      `<ColorDecisionList><ColorDecision><ColorCorrection id="a"><SatNode><Saturation>0.5</Saturation></SatNode></ColorCorrection></ColorDecision>
<ColorDecision><Description>again</Description><ColorCorrectionRef ref="a"/></ColorDecision>${more}</ColorDecisionList>`
    const read = readCcc(decisions(''))
    expect(read.ok && read.value.map(({ cdl, line }) => [cdl.saturation, line])).toEqual([
      [0.5, 1],
      [0.5, 2],
    ])
    expect(read.ok && read.value[1]?.descriptions).toEqual(['again'])
    const astray = readCcc(
      decisions('<ColorDecision><ColorCorrectionRef ref="b"/></ColorDecision>'),
    )
    expect(!astray.ok && astray.problems[0]).toMatchObject({ code: 'not-found', at: { line: 2 } })
    const twice = readCcc(decisions('<ColorDecision><ColorCorrection id="a"/></ColorDecision>'))
    expect(!twice.ok && twice.problems[0].code).toBe('conflict')
    const bad = readCcc(decisions('').replace('0.5', 'x'))
    expect(!bad.ok && bad.problems).toHaveLength(1)
  })

  it('tell line and column of every problem', () => {
    const read = readCcc(`<ColorCorrectionCollection>
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
    const read = readCcc(text)
    expect(read.ok).toBe(false)
    if (!read.ok) expect(read.problems[0].says).toMatch(words)
  })
})

describe('decimals', () => {
  it('read back exactly and have no exponent', () => {
    fc.assert(
      fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), (value) => {
        const text = exactDecimal(value)
        expect(text).toMatch(/^-?\d+(\.\d+)?$/u)
        expect(Number(text)).toBe(value === 0 ? 0 : value)
      }),
      { seed: 2, numRuns: 2000 },
    )
  })
})

describe('the statement of what is not carried', () => {
  it('names the cues whose framing and ramps stay behind, and says nothing of the others', () => {
    const job = sampleJob(undefined, (cue, i) => ({
      ...cue,
      ramp: i === 2 ? 12 : 0,
      framing: i === 1 || i === 3 ? { ...cue.framing, zoom: 1.2 } : cue.framing,
    }))
    const made = handOverFiles(job, REEL_ID, 'ccc')
    const losses = made.ok ? says(made.value.losses) : ''
    expect(losses).toContain('The framing of cues 2 and 4.')
    expect(losses).toContain('The ramp of cue 3')
    expect(losses).not.toContain('agreement')
    expect(losses).not.toContain('Control characters')
    const odd = handOverFiles(
      sampleJob(undefined, (cue, i) => ({ ...cue, note: i === 1 ? 'a\u0007' : 'é\n😀' })),
      REEL_ID,
      'ccc',
    )
    expect(odd.ok && says(odd.value.losses)).toContain('Control characters in the note of cue 2.')
    const plain = handOverFiles(sampleJob(), REEL_ID, 'ccc')
    expect(plain.ok && says(plain.value.losses)).not.toMatch(/framing|ramp/u)
  })
})
