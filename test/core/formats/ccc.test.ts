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
      framing: i === 1 || i === 3 ? { zoom: 1.2, pan: 0, tilt: 0 } : cue.framing,
    }))
    const made = handOverFiles(job, REEL_ID, 'ccc')
    const losses = made.ok ? made.value.losses.join('\n') : ''
    expect(losses).toContain('The framing (zoom, pan and tilt) of cues 2 and 4.')
    expect(losses).toContain('The ramp of cue 3')
    expect(losses).not.toContain('agreement')
    const plain = handOverFiles(sampleJob(), REEL_ID, 'ccc')
    expect(plain.ok && plain.value.losses.join('\n')).not.toMatch(/framing|ramp/u)
  })
})
