import { readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import { describe, expect, it, test } from 'vitest'
import { at } from '../../../../src/core/base/assert.ts'
import { applyProcess } from '../../../../src/core/process/applyProcess.ts'
import {
  array,
  cdl,
  DEPTHS,
  HEAD,
  IDENTITY,
  list,
  operator,
  refusals,
  SMPTE,
  taken,
  zeros,
} from '../../../support/clfTexts.ts'

const MEDIA = resolve(import.meta.dirname, '../../../media/interchange/clf')
const file = (name: string): string => readFileSync(`${MEDIA}/${name}`, 'utf8')

describe('files written by others', () => {
  it('cdl_all_styles.clf: four corrections, their numbers free of bit depths', () => {
    const { list: read, id, descriptions } = taken(file('cdl_all_styles.clf'))
    expect(read.name).toBe('all styles')
    expect(id).toBe('b5cc7aed-d405-4d8b-b64b')
    expect(descriptions).toEqual(['Test all CDL style values'])
    expect(read.steps.map((step) => step.kind === 'cdl' && step.style)).toEqual([
      'forward',
      'reverse',
      'forward-no-clamp',
      'reverse-no-clamp',
    ])
    expect(read.steps[0]).toEqual({
      kind: 'cdl',
      style: 'forward',
      cdl: {
        slope: [1, 1, 0.8],
        offset: [-0.02, 0, 0.15],
        power: [1.05, 1.15, 1.4],
        saturation: 0.75,
      },
    })
  })

  it('cdl_missing_sat.clf: saturation 1, and what of a clamping correction is not taken', () => {
    const { list: read, notTaken } = taken(file('cdl_missing_sat.clf'))
    expect(read.steps[0]).toMatchObject({ style: 'forward', cdl: { saturation: 1 } })
    expect(notTaken.at(-1)).toMatchObject({ code: 'conflict', at: { line: 4 } })
    expect(notTaken.at(-1)?.says).toContain('without the clamps')
  })

  it('lut1d_example.clf: 12-bit codes become signal, past 0…1 too', () => {
    const [step] = taken(file('lut1d_example.clf')).list.steps
    if (step?.kind !== 'curve') throw new Error('This is no curve.')
    expect([step.points, step.channels, step.values.length]).toEqual([65, 1, 65])
    expect(step.values[0]).toBeCloseTo(-1023.75 / 4095, 12)
    expect(step.values[64]).toBeCloseTo(5118.75 / 4095, 12)
  })

  it('matrix_no_newlines.clf: 10-bit in and 12-bit out, offset in the last column', () => {
    const [step] = taken(file('matrix_no_newlines.clf')).list.steps
    if (step?.kind !== 'matrix') throw new Error('This is no matrix.')
    expect(step.rows[0][0]).toBeCloseTo((3.6 * 1023) / 4095, 12)
    expect(step.rows[2][2]).toBeCloseTo((3.4 * 1023) / 4095, 12)
    expect(step.offset[2]).toBeCloseTo(-0.4 / 4095, 12)
  })

  it('range.clf: clamps where no style is written', () => {
    const read = taken(file('range.clf'))
    expect([read.inputDescriptor, read.outputDescriptor]).toEqual(['RGB', 'RGB'])
    const level = [16320 / 65535, 32640 / 65535]
    expect(applyProcess(read.list, [0, 0.3, 1])).toEqual([level[0], 0.3, level[1]])
  })

  it('multiple_ops.clf is refused by name: Log and Exponent, with their lines', () => {
    expect(refusals(file('multiple_ops.clf'))).toEqual([
      [expect.stringMatching(/^Log cannot be carried exactly; put a LUT1D/u), 50],
      [expect.stringMatching(/^Exponent cannot be carried exactly; put a LUT1D/u), 64],
    ])
  })

  it('multiple_ops.clf without these is read, step by step', () => {
    const text = file('multiple_ops.clf')
      .replace(/<Log [\s\S]*<\/Log>/u, '')
      .replace(/<Exponent [\s\S]*<\/Exponent>/u, '')
      .replace('outBitDepth="32f" >', 'outBitDepth="8i">')
      .replace('inBitDepth="16f" outBitDepth="8i"', 'inBitDepth="10i" outBitDepth="8i"')
    const { steps } = taken(text).list
    expect(steps.map(({ kind }) => kind)).toEqual([
      ...['cdl', 'curve', 'range', 'range', 'range', 'matrix', 'cube'],
    ])
    expect(steps[2]).toMatchObject({
      low: [256 / 4095, 20 / 1023],
      high: [3760 / 4095, 1200 / 1023],
      clamps: false,
    })
    expect(steps[6]).toMatchObject({ points: 2, interpolation: 'tetrahedral' })
  })

  it.each([
    ['illegal-cdl_bad_sat.clf', /Saturation must hold one number/u, 11],
    ['illegal-cdl_bad_slope.clf', /Slope must hold 3 numbers; it has 2/u, 6],
  ])('%s is refused with its line', (name, says, line) => {
    expect(refusals(file(name))).toEqual([[expect.stringMatching(says), line]])
  })
})

test('comments, entities, character references, line ends and a byte order mark change nothing', () => {
  const text = `\ufeff<?xml version="1.0" encoding="utf-8"?>

<!-- before -->
    <ProcessList compCLFversion='3' id="id1">
<Info><Stuff>a "difficult" but 'legal' file</Stuff><!-- in --></Info>
    <Matrix id="'m'" inBitDepth="32f" outBitDepth='32f' name='"quote"'><Description>first</Description>
        <Array dim=" 3  3 3 ">
 3.24000 -1.53700 -0.49850 <!-- between
 lines -->
-0.96930\t1.87600  +0.04156
 0.05560 -0.20400  0.105730e+1

            </Array></Matrix>
    <Description>yet &apos;another&apos; n&#8211;dash</Description>
</ProcessList>
<!-- after -->
`
  for (const each of [text, text.replaceAll('\n', '\r\n')]) {
    const { list: read, descriptions } = taken(each)
    expect(descriptions).toEqual(['yet ’another’ n–dash'.replaceAll('’', "'")])
    expect(read.steps).toEqual([
      {
        kind: 'matrix',
        rows: [
          [3.24, -1.537, -0.4985],
          [-0.9693, 1.876, 0.04156],
          [0.0556, -0.204, 1.0573],
        ],
        offset: [0, 0, 0],
      },
    ])
    expect(refusals(each.replace('-0.20400', '-0.2O4'))[0]?.[1]).toBe(11)
  }
})

describe('versions, namespaces and ids', () => {
  it.each([
    ['SMPTE, version 3.0', HEAD],
    ['SMPTE, its own version', `${SMPTE} id="a" compCLFversion="ST2136-1:2024"`],
    ['SMPTE, no version and no id', SMPTE],
    ['Academy, version 3', 'xmlns="urn:AMPAS:CLF:v3.0" id="a" compCLFversion="3"'],
    ['none, version 2.0', 'id="a" compCLFversion="2.0"'],
  ])('are read: %s', (_, head) => {
    expect(taken(list(IDENTITY, head)).list.steps).toHaveLength(1)
  })

  it('are read with a prefix', () => {
    const text = `<clf:ProcessList xmlns:clf="http://www.smpte-ra.org/ns/2136-1/2024">
<clf:Matrix ${DEPTHS}><clf:Array dim="3 3">1 0 0 0 1 0 0 0 1</clf:Array></clf:Matrix></clf:ProcessList>`
    expect(taken(text).list.steps).toHaveLength(1)
  })

  it('take the id from the attribute or the element', () => {
    const uuid = 'urn:uuid:9d768121-0cf9-40a3-a8e3-7b49f79858a7'
    expect(taken(list(`<Id>${uuid}</Id>${IDENTITY}`, SMPTE)).id).toBe(uuid)
    expect(taken(list(IDENTITY)).id).toBe('a')
  })

  it.each([
    ['a later version', 'id="a" compCLFversion="3.2"', /version “3\.2”/u],
    ['no version', 'id="a" xmlns="urn:AMPAS:CLF:v3.0"', /no compCLFversion/u],
    ['no id', 'compCLFversion="3.0"', /no id/u],
    ['an empty id', 'id="" compCLFversion="3.0"', /empty id/u],
    ['a later namespace', 'xmlns="http://www.smpte-ra.org/ns/2136-1/2025"', /not a process list/u],
    ['another namespace', 'xmlns="urn:x" id="a" compCLFversion="3.0"', /not a process list/u],
  ])('are refused with the line: %s', (_, head, says) => {
    expect(refusals(list(IDENTITY, head))).toEqual([[expect.stringMatching(says), 2]])
  })

  it('refuse an Id that is no urn:uuid', () => {
    expect(refusals(list(`<Id>3bae2da8</Id>${IDENTITY}`, SMPTE))).toEqual([
      [expect.stringContaining('urn:uuid'), 3],
    ])
  })
})

describe('what is passed over is told', () => {
  it.each([
    ['Info', `<Info><Copyright>x</Copyright></Info>\n${IDENTITY}`, /^Info/u, 3],
    ['other namespaces', `<x:y xmlns:x="urn:x"/>\n${IDENTITY}`, /^y is of another/u, 3],
    [
      'descriptions of an operator',
      IDENTITY.replace('<Array', '<Description/><Array'),
      /^Names/u,
      3,
    ],
    ['ids of an operator', IDENTITY.replace('Matrix ', 'Matrix id="m" '), /^Names/u, 3],
    [
      'a second descriptor',
      `<InputDescriptor>a</InputDescriptor>\n<InputDescriptor>b</InputDescriptor>${IDENTITY}`,
      /first InputDescriptor/u,
      4,
    ],
  ])('%s', (_, inside, says, line) => {
    const { notTaken } = taken(list(inside))
    expect(notTaken.map((each) => [each.says, each.at?.line])).toEqual([
      [expect.stringMatching(says), line],
    ])
  })

  it('an attribute of the list, and the end of a name too long', () => {
    const { notTaken, list: read } = taken(
      list(IDENTITY, `${HEAD} inverseOf="x" name="${'n'.repeat(1001)}"`),
    )
    expect(notTaken.map(({ says }) => says)).toEqual([
      'Of the name, just the first 1000 characters were taken.',
      'The attribute inverseOf was passed over.',
    ])
    expect(read.name).toHaveLength(1000)
  })

  it('nothing, where all is taken', () => {
    expect(taken(list(IDENTITY)).notTaken).toEqual([])
  })
})

// OpenColorIO 2.1.2 (ociochecklut): facts/otio-clf.md §3.
describe('read and applied, operators give what OpenColorIO gives', () => {
  const SOP_B =
    '<SOPNode><Slope>1.2 1.0 0.9</Slope><Offset>-0.02 0.01 0.03</Offset><Power>1.1 1.0 0.9</Power></SOPNode>'
  const SAT = '<SatNode><Saturation>0.8</Saturation></SatNode>'
  const cube = `${zeros(3)}0 0 1 0 1 0 0 1 1 1 0 0 1 0 1 1 1 0 1 1 0.5`
  test.each<[string, string, readonly number[], readonly number[]]>([
    ['no style', cdl(SOP_B + SAT), [0.9, 0.1, 0.4], [0.8644421, 0.152442, 0.4072478]],
    ['Fwd', cdl(SOP_B + SAT, 'style="Fwd"'), [0.9, 0.1, 0.4], [0.8644421, 0.152442, 0.4072478]],
    [
      'FwdNoClamp',
      cdl(SOP_B + SAT, 'style="FwdNoClamp"'),
      [0.9, 0.1, 0.4],
      [0.9202124, 0.1552566, 0.4100624],
    ],
    ['Rev', cdl(SOP_B + SAT, 'style="Rev"'), [0.9, 0.1, 0.4], [0.85, 0.04206499, 0.3983798]],
    [
      'RevNoClamp',
      cdl(SOP_B + SAT, 'style="RevNoClamp"'),
      [0.9, 0.1, 0.4],
      [0.8893514, 0.04206499, 0.3983798],
    ],
    ['no SatNode', cdl(SOP_B), [0.9, 0.1, 0.4], [1, 0.11, 0.4285072]],
    [
      'Matrix',
      operator('Matrix', DEPTHS, array('3 4', '.9 .1 0 .05  0 1 0 0  0 .2 .8 -.05')),
      [0.9, 0.1, 0.4],
      [0.87, 0.1, 0.29],
    ],
    [
      'LUT1D of codes',
      operator('LUT1D', 'inBitDepth="32f" outBitDepth="10i"', array('3 1', '0 256 1023')),
      [0.25, 0.5, 0.75],
      [0.1251222, 0.2502444, 0.6251222],
    ],
    [
      'LUT3D, blue fastest',
      operator('LUT3D', `${DEPTHS} interpolation="tetrahedral"`, array('2 2 2 3', cube)),
      [0.2, 0.7, 0.4],
      [0.2, 0.7, 0.3],
    ],
  ])('%s', (_, text, [r = 0, g = 0, b = 0], expected) => {
    const colour = applyProcess(taken(text).list, [r, g, b])
    for (const [c, value] of expected.entries()) expect(at(colour, c)).toBeCloseTo(value, 6)
  })

  test('dimensions of version 2, whose third is the channels', () => {
    const text = operator('Matrix', DEPTHS, array('3 4 3', '1 0 0 .1 0 1 0 .2 0 0 1 .3'))
    expect(taken(text).list.steps[0]).toMatchObject({ offset: [0.1, 0.2, 0.3] })
  })
})

test('a cube of 65³ places is read whole', () => {
  const rows = Array.from({ length: 65 ** 3 }, (_, i) => `${i / 4} 0.${i} -${i}e-6`)
  const text = operator('LUT3D', DEPTHS, array('65 65 65 3', `\n${rows.join('\n')}\n`))
  const [step] = taken(text).list.steps
  if (step?.kind !== 'cube') throw new Error('This is no cube.')
  expect(step.values).toHaveLength(3 * 65 ** 3)
  expect(step.values.slice(-3)).toEqual([(65 ** 3 - 1) / 4, 0.274624, -0.274624])
  const wrong = text.replace(/(\S+)\s+<\/Array>/u, '$1x</Array>')
  expect(refusals(wrong)).toEqual([
    [expect.stringContaining('is not a finite decimal'), 4 + 65 ** 3],
  ])
})
