import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { cdlToGrade } from '../../../../src/core/colour/cdl.ts'
import { edlGrade } from '../../../../src/core/formats/edl/edlGrade.ts'
import { readSat, readSop } from '../../../../src/core/formats/edl/edlNumbers.ts'
import { checkGrade } from '../../../../src/core/job/checkGrade.ts'
import { edlOf, foreignIn, notTakenOf } from '../../../support/readEdlWhole.ts'

const EVENT = '001  REEL0042 V     C        01:00:00:00 01:00:04:00 10:00:00:00 10:00:04:00'
const under = (...comments: string[]) => edlOf([EVENT, ...comments].join('\n'))

const GRADE = cdlToGrade({
  slope: [1.1, 1, 0.9],
  offset: [-0.02, 0, 0.03],
  power: [1, 0.8, 1.25],
  saturation: 0.9,
})

describe('grades in comments', () => {
  // The spellings of facts/asc-cdl.md §5, seen in the tests of several public readers.
  it.each([
    ['* ASC_SOP (1.1 1.0 0.9)(-0.02 0 0.03)(1.0 0.8 1.25)', '* ASC_SAT 0.9'],
    ['*ASC_SOP (1.1 1.0 0.9) (-0.02 0.0 0.03) (1 .8 1.25)', '*ASC_SAT 0.9'],
    ['* ASC_SOP: (1.1, 1, 0.9)(-2e-2, 0, +0.03)(1., 0.8, 125E-2)', '* ASC_SAT: 9e-1'],
    ['* asc_sop(1.1,1.0,0.9),(-0.02,0.0,0.03),(1.0,0.8,1.25)', '* asc_sat 0.90000'],
    ['  *   ASC_SOP ( 1.1 1.0 0.9 )( -0.02 0 0.03 )( 1 0.8 1.25 )  ', '\t* ASC_SAT\t0.9'],
    ['ASC_SOP (1.1 1.0 0.9)(-0.02 0 0.03)(1.0 0.8 1.25)', 'ASC_SAT 0.9'],
    ['* ASC_SAT 0.9', '* ASC_SOP (1.1 1.0 0.9)(-0.02 0 0.03)(1.0 0.8 1.25)'],
    ['* ASC_SOP (1.10000000000000000 1 0.9)(-0.02 0 0.03)(1 0.8 1.25)', '* ASC_SAT 0.9'],
  ])('are read from “%s”', (first, second) => {
    const list = under(first, second)
    expect(list.decisions[0]?.values).toEqual({ grade: GRADE })
    expect(list.notTaken).toEqual([])
  })

  it('change nothing in what is not stated', () => {
    expect(under('* ASC_SAT 0.5').decisions[0]?.values.grade).toEqual({
      lift: [0, 0, 0],
      gamma: [1, 1, 1],
      gain: [1, 1, 1],
      saturation: 0.5,
    })
    expect(under('* LOC: 01:00:00:00 RED').decisions[0]?.values).toEqual({})
  })

  it.each([
    ['* ASC_SOP (1.1 1.0 0.9)(-0.02 0 0.03)(1.0 0.8 1.25', /three groups/u],
    ['* ASC_SOP (1.1 1.0)(-0.02 0 0.03)(1.0 0.8 1.25)', /three groups/u],
    ['* ASC_SOP (1.1 1.0 0.9)(-0.02 0 0.03)(1.0 0.8 1.25) x', /three groups/u],
    ['* ASC_SOP (1.10.5 1.0)(0 0 0)(1 1 1)', /three groups/u],
    ['* ASC_SOP 1 1 1 0 0 0 1 1 1', /three groups/u],
    ['* ASC_SOP (1,,1 1 1)(0 0 0)(1 1 1)', /three groups/u],
    ['* ASC_SAT', /one decimal/u],
    ['* ASC_SAT 0.9 0.8', /one decimal/u],
    ['* ASC_SAT -0.1', /saturation -0.1/u],
    ['* ASC_SAT 1e400', /saturation Infinity/u],
    ['* ASC_SOP (-1 1 1)(0 0 0)(1 1 1)', /red slope -1 is below 0/u],
    ['* ASC_SOP (1 1 1)(0 0 0)(1 1 0)', /blue power 0 is not above 0/u],
    ['* ASC_SOP (1 1 1)(0 0 0)(1 1 1e-320)', /Gamma must be above 0/u],
    ['* ASC_SOP (1 1 1)(2e6 0 0)(1 1 1)', /up to a million/u],
    ['* ASC_CC_XML shot_7', /another file/u],
  ])('are told and left out where “%s” is none', (comment, says) => {
    const list = under('* FROM CLIP NAME: quay', comment)
    expect(list.decisions[0]?.name).toBe('quay')
    expect(list.decisions[0]?.values).toEqual({})
    expect(list.notTaken).toHaveLength(1)
    expect(list.notTaken[0]?.at?.line).toBe(3)
    expect(list.notTaken[0]?.says).toMatch(says)
    expect(foreignIn(list).notTaken).toHaveLength(1)
    expect(foreignIn(list).comments).toBeUndefined()
  })

  it('are the first of two, and the second is told', () => {
    const list = under('* ASC_SAT 0.5', '* ASC_SAT 0.7')
    expect(list.decisions[0]?.values.grade?.saturation).toBe(0.5)
    expect(notTakenOf(list)).toEqual([
      '3: The event has an ASC_SAT already; this second one was left.',
    ])
    expect(foreignIn(list).notTaken).toEqual(['ASC_SAT 0.7'])
  })

  it('belong to the event above them, of an effect to what comes in', () => {
    const list = edlOf(
      [
        EVENT,
        '002  REEL0042 V     C        01:00:04:00 01:00:04:00 10:00:04:00 10:00:04:00',
        '* ASC_SAT 0.1',
        '002  REEL0043 V     D    010 02:00:00:00 02:00:02:00 10:00:04:00 10:00:06:00',
        '* ASC_SAT 0.2',
      ].join('\n'),
    )
    expect(list.decisions.map(({ values }) => values.grade?.saturation)).toEqual([undefined, 0.2])
    expect(notTakenOf(list)).toEqual([
      '3: The grade of the outgoing picture of an effect is left to its own event.',
    ])
    expect(foreignIn(list, 1).notTaken).toEqual(['ASC_SAT 0.1'])
  })

  it('have each decimal rounded as the language itself rounds it', () => {
    const decimal = fc.oneof(
      fc.double({ noNaN: true, noDefaultInfinity: true }).map(String),
      fc.tuple(fc.nat(), fc.nat()).map(([whole, part]) => `${whole}.${part}`),
      fc.stringMatching(/^[+-]?\d{1,20}\.\d{0,20}$/u),
    )
    fc.assert(
      fc.property(decimal, (text) => {
        expect(readSat(text, 0)).toBe(Number(text))
        expect(readSop(`(${text} 1 ${text})(0 0 0)(1 1 ${text})`, 0)?.power[2]).toBe(Number(text))
      }),
      { seed: 1, numRuns: 2000 },
    )
  })

  it('pass without the slow check only where the slow check passes', () => {
    const value = fc.oneof(
      fc.double({ noNaN: true, min: -2e6, max: 2e6 }),
      fc.constantFrom(0, -0, 1e-7, 1e-6, 2e-6, 5e5, 1e6),
    )
    const numbers = fc.tuple(value, value, value)
    fc.assert(
      fc.property(numbers, numbers, numbers, value, (slope, offset, power, saturation) => {
        const read = edlGrade({ slope, offset, power }, saturation)
        if (read.ok) expect(checkGrade(read.value).ok).toBe(true)
      }),
      { seed: 1, numRuns: 2000 },
    )
  })
})

describe('other comments', () => {
  it('give ramps and notes of our own lists', () => {
    const list = under(
      '* RAMP 012 FRAMES EASED',
      '* NOTE: a first line that goes',
      '* NOTE CONTINUED: on and is cut in mid',
      '* NOTE JOINED: word',
      '* NOTE:',
      '* NOTE: a third line',
    )
    expect(list.decisions[0]?.values).toEqual({
      ramp: 12,
      rampShape: 'eased',
      note: 'a first line that goes on and is cut in midword\n\na third line',
    })
  })

  it('never give a ramp for the length of a dissolve', () => {
    const list = edlOf('002  R V D 010 02:00:00:00 02:00:02:00 10:00:04:00 10:00:06:00')
    expect(list.decisions[0]?.values).toEqual({})
    expect(list.decisions[0]?.transition.frames).toBe(10)
  })

  it('are told where they are past the limits of a job', () => {
    const list = under('* RAMP 10001 FRAMES', `* NOTE: ${'x'.repeat(4001)}`)
    expect(list.decisions[0]?.values).toEqual({})
    expect(notTakenOf(list)).toEqual([
      '2: A ramp has at most 10,000 frames; this one of 10001 was left.',
      '1: A note holds at most 4000 characters; this one was left.',
    ])
    const full = under(...Array.from({ length: 1100 }, (_, i) => `* ${i} ${'x'.repeat(100)}`))
    expect(full.decisions[0]?.foreign).toEqual([])
    expect(notTakenOf(full)[0]).toMatch(/^1: Comments of an event are kept up to 100000 char/u)
  })

  it('are kept in order as they stand, with or without an asterisk', () => {
    const list = under(
      '>>> SOURCE 042 OFF LINE',
      'SPLIT:    AUDIO DELAY=  00:00:00:12',
      'EFFECTS NAME IS RIPPLE',
      'BLANK',
      'GPI 1',
      '*',
      '* SOURCE FILE: other.mov',
      '*  Ramp up slowly ',
    )
    expect(foreignIn(list)).toEqual({
      events: [EVENT],
      comments: [
        '>>> SOURCE 042 OFF LINE',
        'SPLIT:    AUDIO DELAY=  00:00:00:12',
        'EFFECTS NAME IS RIPPLE',
        'BLANK',
        'GPI 1',
        'SOURCE FILE: other.mov',
        'Ramp up slowly',
      ],
    })
    // REEL0042 is not short for other.mov: the event line's own name stands.
    expect(list.decisions[0]?.source).toBe('REEL0042')
    expect(list.notTaken).toEqual([])
  })

  it('above the first event are kept of the list, and values there told', () => {
    const list = edlOf(
      `TITLE:  A title \n* made on Monday\nFCM: SOMETIMES\n* ASC_SAT 2\n${EVENT}\nTITLE: another`,
    )
    expect(list.title).toBe('A title')
    expect(JSON.parse(list.foreign[0]?.text ?? '')).toEqual({
      title: 'A title',
      comments: ['made on Monday', 'FCM: SOMETIMES'],
      notTaken: ['ASC_SAT 2'],
    })
    expect(notTakenOf(list)).toEqual([
      '3: FCM says neither DROP FRAME nor NON-DROP FRAME; it was left.',
      '4: This comment is above the first event and belongs to none.',
    ])
    expect(foreignIn(list).comments).toEqual(['TITLE: another'])
  })
})
