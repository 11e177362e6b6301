import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { IDENTITY_GRADE } from '../../../../src/core/colour/grade.ts'
import { CSV_COLUMNS } from '../../../../src/core/formats/csv/csvColumns.ts'
import { guardText, unguardText } from '../../../../src/core/formats/csv/guardedText.ts'
import { lossesCsv } from '../../../../src/core/formats/csv/lossesCsv.ts'
import { readCsv } from '../../../../src/core/formats/csv/readCsv.ts'
import { writeCsv } from '../../../../src/core/formats/csv/writeCsv.ts'
import type { DecisionList } from '../../../../src/core/formats/decisionList.ts'
import { checkGrade } from '../../../../src/core/job/checkGrade.ts'
import { cueEnd, cuesOfReel } from '../../../../src/core/job/cueList.ts'
import type { Cue, Job } from '../../../../src/core/job/job.ts'
import { IDENTITY_FRAMING } from '../../../../src/core/picture/framing.ts'
import { rate } from '../../../../src/core/time/rate.ts'
import { says } from '../../../support/lossWords.ts'
import { answerOf } from '../../../support/sampleAnswer.ts'
import { REEL_ID, sampleJob, sampleReel } from '../../../support/sampleJob.ts'

const TIMING = { rate: rate(25), isDropFrame: false }

const written = (job: Job): string => {
  const made = writeCsv(job, REEL_ID)
  if (!made.ok) throw new Error(made.problems[0].says)
  return made.value.files[0]?.text ?? ''
}

const read = (text: string, timing = TIMING): DecisionList => {
  const list = readCsv(text, timing)
  if (!list.ok) throw new Error(list.problems.map((each) => each.says).join('\n'))
  return list.value
}

const refusals = (text: string): readonly (readonly [number | undefined, string | undefined])[] => {
  const list = readCsv(text, TIMING)
  return list.ok ? [] : list.problems.map(({ at }) => [at?.line, at?.field] as const)
}

/** The cells of a row by heading, of a list whose cells hold no comma. */
const row = (text: string, index: number): Readonly<Record<string, string>> => {
  const [heads = [], ...rows] = text.split('\r\n').map((line) => line.split(','))
  return Object.fromEntries(heads.map((head, place) => [head, rows[index]?.[place] ?? '']))
}

const graded = (cue: Cue, index: number): Cue => ({
  ...cue,
  grade: { ...IDENTITY_GRADE, lift: [0.1, 0, -0.05], gamma: [1.25, 1, 0.8], gain: [1.1, 1, 0.9] },
  framing: { ...IDENTITY_FRAMING, zoom: 1.5 },
  scene: `S${index}`,
})

describe('a ledger as comma-separated values', () => {
  it('has a row of headings and a row a cue, with places in frames, labels, feet and seconds', () => {
    const text = written(sampleJob([0, 100, 250], graded))
    expect(text.split('\r\n')[0]).toBe(CSV_COLUMNS.join(','))
    // 900,000 frames at 25 a second are ten hours; 16 mm has 40 frames a foot (facts F1).
    expect(row(text, 1)).toMatchObject({
      cue: '2',
      'first frame': '100',
      'last frame': '249',
      'timecode in': '10:00:04:00',
      'timecode out': '10:00:10:00',
      footage: '2 ft 20 fr',
      frames: '150',
      seconds: '6',
      scene: 'S1',
      zoom: '1.5',
      agreement: 'open',
    })
    expect(text.endsWith('\r\n')).toBe(true)
    expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/)
  })

  it('has every grade as ASC CDL too: slope is gain less lift, power one over gamma', () => {
    expect(row(written(sampleJob([0], graded)), 0)).toMatchObject({
      'slope R': '1',
      'slope B': '0.9500000000000001',
      'offset R': '0.1',
      'power R': '0.8',
      'power B': '1.25',
    })
  })

  it('is marked as UTF-8 only where it holds more than ASCII', () => {
    expect(written(sampleJob())).toMatch(/^cue/)
    expect(written(sampleJob([0], (cue) => ({ ...cue, note: 'Größe' })))).toMatch(/^\ufeffcue/)
  })

  it('holds no cell that a spreadsheet takes for a formula', () => {
    const notes = ['=1+1', '+49 30', '-2 points', '@home', '\t=x', '\r=x', "'=1", '＝1', '\n=1']
    const firsts = notes.map((_, index) => index * 10)
    const job = sampleJob(firsts, (cue, index) => ({
      ...cue,
      note: notes[index] ?? '',
      scene: '=S',
      gradeName: '@g',
      alternates: [{ name: '=alt', grade: IDENTITY_GRADE }],
    }))
    const text = written(job)
    const isNumber = /^-?\d+(\.\d+)?$/
    for (const cell of text.split(/,|\r\n/u).map((each) => each.replace(/^"/u, '')))
      if (/^[=+\-@\t\r\n＝]/u.test(cell)) expect(cell).toMatch(isNumber)
    expect(read(text).decisions.map(({ values }) => values.note)).toEqual(notes)
  })

  it('guards text so that it comes back exactly, apostrophes and all', () => {
    const hostile = fc.string({ unit: fc.constantFrom("'", '=', '-', '@', '\t', 'a', ' ', '＋') })
    fc.assert(
      fc.property(hostile, (text) => {
        expect(unguardText(guardText(text))).toBe(text)
        expect(guardText(text)).not.toMatch(/^[=+\-@\t\r]/)
      }),
      { seed: 1, numRuns: 1000 },
    )
    expect(guardText("'quoted'")).toBe("'quoted'")
    // Written by another hand, without an apostrophe: nothing is taken off.
    expect(read("note\n-2 points\n'tis\n").decisions.map(({ values }) => values.note)).toEqual([
      '-2 points',
      "'tis",
    ])
  })

  it('comes back to the last bit, whatever its numbers and words', () => {
    const number = (min: number, max: number) =>
      fc.double({ min, max, noNaN: true }).map((value) => value + 0)
    const triple = (min: number, max: number) =>
      fc.tuple(number(min, max), number(min, max), number(min, max))
    const words = fc.oneof(
      fc.string({ unit: 'binary', maxLength: 40 }),
      fc.constantFrom('=1+1', "'=1", 'a "b", c', 'two\r\nlines', '\n', ' ', '日本 é 🎞', '-0.5'),
    )
    const anyCue = fc.record({
      grade: fc
        .record({
          lift: triple(-1, 1),
          gamma: triple(1e-6, 10),
          gain: triple(1, 1e6),
          saturation: number(0, 4),
        })
        .filter((grade) => checkGrade(grade).ok),
      framing: fc.record({
        zoom: number(0.25, 8),
        pan: number(-1, 1),
        tilt: number(-1, 1),
        rotation: number(-180, 180),
        squeeze: number(0.25, 4),
        blanking: number(-0.95, 0.95),
      }),
      ramp: fc.integer({ min: 0, max: 10_000 }),
      rampShape: fc.constantFrom('linear' as const, 'eased' as const),
      boundary: fc.record({
        kind: fc.constantFrom('cut', 'dissolve', 'fade-in', 'by-hand'),
        confidence: number(0, 1),
      }) as fc.Arbitrary<Cue['boundary']>,
      note: words,
      scene: words,
      gradeName: words,
    })
    const anyTiming = fc.constantFrom(
      { rate: rate(25), isDropFrame: false },
      { rate: rate(24_000, 1001), isDropFrame: false },
      { rate: rate(30_000, 1001), isDropFrame: true },
      { rate: rate(120), isDropFrame: false },
    )
    fc.assert(
      fc.property(
        fc.array(anyCue, { minLength: 1, maxLength: 4 }),
        anyTiming,
        // Late labels go over midnight.
        fc.constantFrom(0, 89_000, 2_159_950, 900_000),
        (changes, timing, startCount) => {
          const reel = sampleReel({ ...timing, startCount })
          const firsts = changes.map((_, index) => index * 37)
          const job = sampleJob(firsts, (cue, index) => ({ ...cue, ...changes[index] }), reel)
          const list = read(written(job), timing)
          const cues = cuesOfReel(job, REEL_ID)
          expect(list.notTaken).toEqual([])
          expect(list.decisions.map(({ values }) => values)).toEqual(
            cues.map(({ ramp, rampShape, boundary, grade, gradeName, framing, scene, note }) => ({
              ...{ ramp, rampShape, boundary, grade, gradeName, framing, scene, note },
            })),
          )
          const day = timing.rate.num === 120 ? 86_400 * 120 : Number.MAX_SAFE_INTEGER
          for (const [index, { recordSpan, name }] of list.decisions.entries()) {
            const cue = cues[index]
            if (!cue || !recordSpan) throw new Error('a cue without a place')
            expect(name).toBe(cue.id)
            expect(recordSpan.to - recordSpan.from).toBe(cueEnd(cues, index, 1000) - cue.first)
            if (startCount + 1000 < 2_000_000)
              expect(recordSpan.from % day).toBe(startCount + cue.first)
          }
        },
      ),
      { seed: 1, numRuns: 300 },
    )
  })
})

describe('a ledger read back', () => {
  it('goes by its headings, whatever their order and spelling, and leaves out what is not there', () => {
    const list = read('Note,TIMECODE_IN,First-Frame\r\nhello,10:00:04:00,100\r\n')
    expect(list).toMatchObject({ format: 'csv', rate: TIMING.rate, notTaken: [] })
    expect(list.decisions).toEqual([
      {
        name: '',
        source: '',
        sourceSpan: undefined,
        recordSpan: { from: 900_100, to: 900_101 },
        transition: { kind: 'cut', frames: 0 },
        values: { note: 'hello' },
        line: 2,
        foreign: [],
      },
    ])
  })

  it('takes empty cells of grade and framing as nothing stated', () => {
    const text = written(sampleJob([0, 100], graded))
    const [heads = '', first = ''] = text.split('\r\n')
    const empty = CSV_COLUMNS.map((column) => (column === 'timecode in' ? '10:00:04:00' : ''))
    const list = read([heads, first, empty.join(','), ''].join('\r\n'))
    expect(list.decisions[1]?.values).toEqual({ gradeName: '', scene: '', note: '' })
  })

  it('takes a boundary without its confidence as one that a person decided', () => {
    const { decisions } = read('boundary,confidence,note\nDissolve,,\ncut,0.5,\n,,x\n')
    expect(decisions.map(({ values }) => values.boundary)).toEqual([
      { kind: 'dissolve', confidence: 1 },
      { kind: 'cut', confidence: 0.5 },
      undefined,
    ])
  })

  it('takes places by frames where no timecode is there, or nothing tells how it counts', () => {
    const text = 'first frame,last frame,note\n0,99,a\n100,249,b\n'
    expect(read(text).decisions.map(({ recordSpan }) => recordSpan)).toEqual([
      { from: 0, to: 100 },
      { from: 100, to: 250 },
    ])
    const labelled = readCsv('timecode in,first frame\n10:00:00:00,7\n', undefined)
    expect(labelled.ok && labelled.value).toMatchObject({
      rate: undefined,
      decisions: [{ recordSpan: { from: 7, to: 8 } }],
    })
  })

  it('takes the grade from slope, offset and power where lift, gamma and gain are not there', () => {
    const heads = [
      ...['slope R', 'slope G', 'slope B', 'offset R', 'offset G', 'offset B'],
      ...['power R', 'power G', 'power B', 'saturation'],
    ]
    const list = read(`${heads.join(',')}\n1,1,1,0.5,0,-0.25,0.5,1,2,0.75\n`)
    // gain = slope + offset, lift = offset, gamma = 1/power (design.md, signal and grade).
    expect(list.decisions[0]?.values.grade).toEqual({
      lift: [0.5, 0, -0.25],
      gamma: [2, 1, 0.5],
      gain: [1.5, 1, 0.75],
      saturation: 0.75,
    })
  })

  it('tells where slope, offset and power say otherwise, and goes by lift, gamma and gain', () => {
    const text = written(sampleJob([0, 100], graded))
    const edited = text.replace(/0\.9500000000000001/, '2')
    expect(edited).not.toBe(text)
    const list = read(edited)
    expect(list.notTaken).toMatchObject([{ code: 'conflict', at: { line: 2, field: 'slope B' } }])
    expect(list.decisions[0]?.values.grade?.gain).toEqual([1.1, 1, 0.9])
  })

  it('takes digits cut to fifteen, as spreadsheets cut them, for the same', () => {
    const third = 1 / 3
    const job = sampleJob([0], (cue) => ({
      ...cue,
      grade: { ...IDENTITY_GRADE, gamma: [third, third, 1], gain: [2 / 3, 1, 1] },
    }))
    const cut = written(job).replace(/\d+\.\d{15,}/g, (each) =>
      String(Number(each).toPrecision(15)),
    )
    expect(cut).not.toBe(written(job))
    expect(read(cut).notTaken).toEqual([])
  })

  it('tells where frames and timecode disagree, and goes by the timecode', () => {
    const list = read('timecode in,first frame\n10:00:00:00,0\n10:00:04:00,90\n')
    expect(list.notTaken).toMatchObject([{ at: { line: 3, field: 'first frame' } }])
    expect(list.decisions[1]?.recordSpan?.from).toBe(900_100)
  })

  it('tells of columns that are not a ledger’s, and of what no list brings back', () => {
    const text =
      'note,lens,agreement,alternates,lift R,saturation\na,50,agreed,warm,1,1\nb,,open,,,\n'
    expect(read(text).notTaken.map(({ at }) => at)).toEqual([
      { line: 1, field: 'lens' },
      { line: 1, field: 'lift G' },
      { line: 1, field: 'lift R' },
      { line: 2, field: 'agreement' },
      { line: 2, field: 'alternates' },
    ])
  })

  it('refuses, by line and column, whatever it cannot read, and takes nothing then', () => {
    const text = written(sampleJob([0, 100], graded))
    const edit = (column: string, value: string): string => {
      const lines = text.split('\r\n').map((line) => line.split(','))
      const place = lines[0]?.indexOf(column) ?? -1
      lines[2]?.splice(place, 1, value)
      return lines.map((cells) => cells.join(',')).join('\r\n')
    }
    expect(refusals(edit('lift R', '"0,1"'))).toEqual([[3, 'lift R']])
    expect(refusals(edit('lift R', ''))).toEqual([[3, 'lift R']])
    expect(refusals(edit('gain G', '-1'))).toEqual([[3, 'gain G']])
    expect(refusals(edit('gamma B', '0'))).toEqual([[3, 'gamma B']])
    expect(refusals(edit('saturation', '-1'))).toEqual([[3, 'saturation']])
    expect(refusals(edit('saturation', ''))).toEqual([[3, 'saturation']])
    expect(refusals(edit('zoom', '9'))).toEqual([[3, 'zoom']])
    expect(refusals(edit('ramp', '1.5'))).toEqual([[3, 'ramp']])
    expect(refusals(edit('ramp shape', 'round'))).toEqual([[3, 'ramp shape']])
    expect(refusals(edit('timecode in', '10:00:04:25'))).toEqual([[3, 'timecode in']])
    expect(refusals(edit('timecode out', '10:00:04:00'))).toEqual([[3, 'timecode out']])
    expect(refusals(edit('first frame', '-1'))).toEqual([[3, 'first frame']])
    expect(refusals(edit('note', 'n'.repeat(4001)))).toEqual([[3, 'note']])
    expect(refusals(edit('scene', 'a,b'))).toContainEqual([3, undefined])
    expect(refusals(edit('boundary', 'splice'))).toEqual([[3, 'boundary']])
    expect(refusals(edit('boundary', ''))).toEqual([[3, 'boundary']])
    expect(refusals(edit('confidence', '1.5'))).toEqual([[3, 'confidence']])
    expect(refusals(edit('offset R', '1e999'))).toEqual([[3, 'offset R']])
  })

  it('refuses what is no ledger, saying what to do', () => {
    const saysOf = (text: string) => {
      const list = readCsv(text, TIMING)
      return list.ok ? '' : list.problems.map((each) => each.says).join('\n')
    }
    expect(saysOf('')).toContain('no row')
    expect(saysOf('a,b\n1,2\n')).toContain('names no column of a ledger')
    expect(saysOf('cue|note\n1|x\n')).toContain('names no column of a ledger')
    expect(saysOf('sep=|\ncue|note\n1|x\n')).toContain('Line 1 names no column of a ledger')
    expect(saysOf('note,Note\nx,y\n')).toContain('twice')
    expect(saysOf('note\n')).toContain('no cue')
    expect(saysOf('note,scene\nx\n')).toContain('1 cells, the headings are 2')
  })
})

describe('losses of comma-separated values', () => {
  it('tell what has no column, and say nothing of what has', () => {
    const job = sampleJob([0, 100], (cue, index) =>
      index === 0
        ? graded(cue, index)
        : {
            ...graded(cue, index),
            ramp: 12,
            alternates: [{ name: 'warm', grade: IDENTITY_GRADE }],
            note: 'half \ud800',
            answers: [answerOf(cue)],
            foreign: [{ format: 'edl', text: '{}' }],
          },
    )
    const losses = lossesCsv(job, REEL_ID)
    expect(losses.map(({ subject, cues }) => [subject, cues])).toEqual([
      ['Alternates', [2]],
      ['What was agreed', [2]],
      ['Broken characters', [2]],
      ['Words of other lists', [2]],
      ['Particulars', []],
    ])
    expect(says(losses)).toContain('Their names go out')
    expect(lossesCsv(sampleJob([0], graded), REEL_ID).map(({ subject }) => subject)).toEqual([
      'Particulars',
    ])
    expect(written(job)).toContain('half \ufffd')
  })
})
