import { describe, expect, it } from 'vitest'
import { readEdl } from '../../../../src/core/formats/edl/readEdl.ts'
import { edlOf, foreignIn, notTakenOf, refusalsOf } from '../../../support/readEdlWhole.ts'

const CUT = '001  REEL0042 V     C        01:00:00:00 01:00:04:00 10:00:00:00 10:00:04:00'

describe('event lines', () => {
  it('take six digits, long and spaced names of reels, tabs, small letters', () => {
    const list = edlOf(
      [
        'TITLE: forms',
        '000001  A006C014_1701069O  V  C  01:00:00:00 01:00:04:00 10:00:00:00 10:00:04:00',
        '000002\tHARBOUR CAN 3\tv\tc\t01:00:00:00 01:00:04:00 10:00:04:00 10:00:08:00',
        '3 042 B C 1:00:00:00 1:00:04:00 10:00:08:00 10:00:12:00',
      ].join('\n'),
    )
    expect(list.decisions.map(({ source }) => source)).toEqual([
      'A006C014_1701069O',
      'HARBOUR CAN 3',
      '042',
    ])
    expect(list.notTaken).toEqual([])
    expect(list.decisions.map(({ line }) => line)).toEqual([2, 3, 4])
  })

  it('take wipes of two lines, and an effect that has a line only', () => {
    const list = edlOf(
      [
        CUT,
        '002  REEL0042 V     C        01:00:04:00 01:00:04:00 10:00:04:00 10:00:04:00',
        '002  REEL0043 V     W012 025 02:00:00:00 02:00:02:00 10:00:04:00 10:00:06:00',
        '* FROM CLIP NAME: quay',
        '* TO CLIP NAME: mast',
        '003  REEL0044 V     D    012 02:00:00:00 02:00:02:00 10:00:06:00 10:00:08:00',
        '* FROM CLIP NAME: mast or what comes in',
      ].join('\r\n'),
    )
    expect(list.decisions.map(({ transition }) => transition)).toEqual([
      { kind: 'cut', frames: 0 },
      { kind: 'wipe', frames: 25 },
      { kind: 'dissolve', frames: 12 },
    ])
    expect(list.decisions.map(({ name }) => name)).toEqual(['', 'mast', ''])
    expect(foreignIn(list, 2).comments).toEqual(['CLIP NAME: mast or what comes in'])
    expect(list.notTaken).toEqual([])
  })

  it('take the background of a key, and tell what was keyed over it', () => {
    const list = edlOf(
      [
        CUT,
        '002  REEL0042 V     K B      01:00:04:00 01:00:08:00 10:00:04:00 10:00:08:00',
        '002  TITLES   V     K    000 00:00:00:00 00:00:04:00 10:00:04:00 10:00:08:00',
        '* FROM CLIP NAME: deck',
        '003  TITLES   V     KO   010 00:00:00:00 00:00:04:00 10:00:04:00 10:00:08:00',
      ].join('\n'),
    )
    expect(list.decisions.map(({ name, transition }) => [name, transition.kind])).toEqual([
      ['', 'cut'],
      ['deck', 'other'],
    ])
    expect(notTakenOf(list)).toEqual([
      '2: The background of a key is taken as a cut to it.',
      '3: A picture keyed over another is not taken; a cue has one.',
      '5: A picture keyed over another is not taken; a cue has one.',
    ])
    expect(foreignIn(list, 1).events).toHaveLength(2)
  })

  it('count sound that is passed over, and pictures above the lowest track', () => {
    const list = edlOf(
      [
        CUT,
        '002  REEL0042 AA    C        01:00:00:00 01:00:04:00 10:00:00:00 10:00:04:00',
        '* ASC_SAT 3',
        '003  REEL0042 A2    C        01:00:00:00 01:00:04:00 10:00:00:00 10:00:04:00',
        '004  REEL0042 NONE  C        01:00:00:00 01:00:04:00 10:00:00:00 10:00:04:00',
        '005  REEL0042 V2    C        01:00:00:00 01:00:04:00 10:00:00:00 10:00:04:00',
        '006  REEL0042 AA/V  C        01:00:04:00 01:00:08:00 10:00:04:00 10:00:08:00',
      ].join('\n'),
    )
    expect(list.decisions.map(({ line }) => line)).toEqual([1, 7])
    expect(list.decisions[0]?.values).toEqual({})
    expect(notTakenOf(list)).toEqual([
      '6: A picture on track V2, above V1, was passed over: a cue has one picture.',
      '2: 3 events have no picture and were passed over, with the comments under them.',
    ])
    const alone = '005  REEL0042 V2    C        01:00:00:00 01:00:04:00 10:00:00:00 10:00:04:00'
    expect(edlOf(alone).decisions).toHaveLength(1)
    const keyed = '004  TITLES   V     K    000 00:00:00:00 00:00:04:00 10:00:04:00 10:00:08:00'
    expect(edlOf(`${keyed}\n${alone}`).decisions.map(({ line }) => line)).toEqual([2])
  })

  it('tell speeds, freezes, and lengths that differ without one', () => {
    const event = (number: number, out: string): string =>
      `00${number}  REEL0042 V     C        01:00:00:00 01:00:02:00 10:00:00:00 ${out}`
    const list = edlOf(
      [
        event(1, '10:00:04:00'),
        'M2   REEL0042       012.5                01:00:00:00',
        event(2, '10:00:04:00'),
        'M2   REEL0042       000.0                01:00:00:00',
        event(3, '10:00:04:00'),
        event(4, '10:00:02:00'),
      ].join('\n'),
    )
    expect(list.decisions).toHaveLength(4)
    expect(notTakenOf(list)).toEqual([
      '2: The speed of the picture (M2) is not taken; place the cue by record times.',
      '4: The picture stands still here (M2 with speed 0), which a cue has not; place it by record times.',
      '5: The source has 48 frames and the record 96, without an M2 line that says why; both were taken as they are.',
    ])
    expect(foreignIn(list, 0).comments).toEqual([
      'M2   REEL0042       012.5                01:00:00:00',
    ])
  })

  it('pass over an event without frames, and say so', () => {
    const list = edlOf(
      `${CUT}\n002  REEL0042 V     C        01:00:04:00 01:00:04:00 10:00:04:00 10:00:04:00`,
    )
    expect(list.decisions).toHaveLength(1)
    expect(notTakenOf(list)).toEqual(['2: This event has no frames and was passed over.'])
  })

  it('end past midnight where the out is just before the in', () => {
    const list = edlOf('001 R V C 23:59:58:00 00:00:02:00 23:59:58:00 00:00:02:00', {
      rate: { num: 25, den: 1 },
      isDropFrame: false,
    })
    expect(list.decisions[0]?.recordSpan).toEqual({ from: 2_159_950, to: 2_160_050 })
  })

  it('refuse the list where one is broken, naming each', () => {
    const refusals = refusalsOf(
      [
        CUT,
        '002  REEL0042 V     C        01:00:00:00 01:00:04:00 10:00:00:00',
        '003  REEL0042 V     C        01:00:00:00 01:00:04:0 10:00:00:00 10:00:04:00',
        '004  REEL0042 V     C        01:60:00:00 01:00:04:00 10:00:00:00 10:00:04:00',
        '005  REEL0042 V     Q        01:00:00:00 01:00:04:00 10:00:00:00 10:00:04:00',
        '006  REEL0042 V     D        01:00:00:00 01:00:04:00 10:00:00:00 10:00:04:00',
        '007  V        C     000      01:00:00:00 01:00:04:00 10:00:00:00 10:00:04:00',
        '008  REEL0042 X     C        01:00:00:00 01:00:04:00 10:00:00:00 10:00:04:00',
        '009  REEL0042 V     C        01:00:00:00 01:00:04:00 10:00:00:00 10:00:04:00 ?',
      ].join('\n'),
    )
    expect(refusals.map((each) => each.slice(0, 40))).toEqual([
      '2: An event line has number, reel, track',
      '3: “01:00:04:0” is not a timecode; an ev',
      '4: “01:60:00:00” is not a timecode; an e',
      '5: “Q” is not a transition; write C, D, ',
      '6: A dissolve needs its duration in fram',
      "7: “V” is not a track after a reel's nam",
      "8: “X” is not a track after a reel's nam",
      '9: “?” is not a timecode; an event line ',
    ])
    expect(refusalsOf('1 R V C 01:00:04:00 01:00:00:00 01:00:00:00 01:00:04:00')).toEqual([
      '1: The out 01:00:00:00 is before the in 01:00:04:00; correct one of them.',
    ])
  })

  it('refuse two events that have run into one line', () => {
    expect(refusalsOf(`${CUT}${CUT}`)[0]).toMatch(/^1: An event line has four times/u)
  })

  it('end in CR alone, in some lines or in all', () => {
    const text = `${CUT}\n* ASC_SAT 0.5\n${CUT}\n* ASC_SAT 0.6\n`
    const list = edlOf(text)
    expect(list.decisions.map(({ values }) => values.grade?.saturation)).toEqual([0.5, 0.6])
    for (const place of [0, 1, 2]) {
      const lines = text.split('\n')
      const mixed = lines.map((line, i) => line + (i === place ? '\r' : '\n')).join('')
      expect(edlOf(mixed)).toEqual(list)
    }
    expect(edlOf(text.replaceAll('\n', '\r\r\n'))).toEqual(list)
  })

  it('refuse a line that ends like one without a number before it', () => {
    expect(refusalsOf(`${CUT}\n${CUT.replace('001', '0O2')}`)).toEqual([
      '2: This line ends in four times like an event, but does not begin with its number; correct it, or put * before a comment.',
    ])
    expect(edlOf(`${CUT}\n* ${CUT}`).decisions).toHaveLength(1)
  })

  it('take lines made to be slow in time that does not grow with the square of their length', () => {
    // Each line alone would take hours otherwise: the test would not end in its time.
    const blanks = ' '.repeat(2 ** 22)
    const list = edlOf(
      [CUT, `FCM${blanks}x`, `M2${blanks}x`, `* RAMP${blanks}x`, `* ASC_SOP${blanks}x`].join('\n'),
    )
    expect(list.decisions).toHaveLength(1)
    expect(refusalsOf(`1${blanks}x`)).toHaveLength(1)
    expect(refusalsOf(`x${' 01:00:00:00'.repeat(2 ** 18)}`)).toHaveLength(2)
  })

  it('quote no more of a word than tells which it is', () => {
    const [says] = refusalsOf(
      `1 R V ${'Q'.repeat(1e6)} 00:00:00:00 00:00:01:00 00:00:00:00 00:00:01:00`,
    )
    expect(says?.length).toBeLessThan(200)
    expect(refusalsOf(CUT.replace('C   ', 'D 9999999'))[0]).toMatch(/more digits/u)
  })

  it('tell the first thousand broken ones, and how many more there are', () => {
    const read = readEdl('1 broken\n'.repeat(1500), undefined)
    expect(!read.ok && read.problems).toHaveLength(1001)
    expect(!read.ok && read.problems.at(-1)?.says).toBe('There are 500 more like these.')
  })

  it.each([
    '',
    '\n\n',
    'TITLE: no events\nFCM: DROP FRAME\n* comment',
    '<?xml version="1.0"?>',
    '\0\0',
  ])('are missing in “%s”, which is refused', (text) => {
    expect(refusalsOf(text)[0]).toMatch(/^1: There is no event line/u)
  })

  it('are refused past the limits of size', () => {
    const read = readEdl(' '.repeat(64 * 2 ** 20 + 1), undefined)
    expect(!read.ok && read.problems[0]).toMatchObject({ code: 'too-large', at: { byte: 2 ** 26 } })
    const many = readEdl(
      '1 A V C 00:00:00:00 00:00:00:01 00:00:00:00 00:00:00:01\n'.repeat(1_000_001),
      undefined,
    )
    expect(!many.ok && many.problems[0]).toMatchObject({
      code: 'too-large',
      at: { line: 1_000_001 },
    })
  })
})
