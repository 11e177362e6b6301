import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { parseCsv } from '../../../../src/core/base/csv.ts'
import { ledgerForm } from '../../../../src/core/formats/csv/ledgerForm.ts'
import { readCsv } from '../../../../src/core/formats/csv/readCsv.ts'
import { writeCsv } from '../../../../src/core/formats/csv/writeCsv.ts'
import { sniffText } from '../../../../src/core/formats/sniffText.ts'
import { rate } from '../../../../src/core/time/rate.ts'
import { partedBy } from '../../../support/csvTexts.ts'
import { REEL_ID, sampleJob } from '../../../support/sampleJob.ts'

const TIMING = { rate: rate(25), isDropFrame: false }

const NOTES = ['a;b', 'one, two', 'tab\there', 'two\r\nlines "quoted"', '1,5', '']

/** Numbers whose decimals need every bit. */
const LEDGER = (() => {
  const made = writeCsv(
    sampleJob([0, 100, 250, 300, 400, 500], (cue, index) => ({
      ...cue,
      note: NOTES[index] ?? '',
      grade: {
        lift: [0.1 + 0.2, -1 / 3, 1e-7],
        gamma: [1 / 3, 1, 2.2],
        gain: [2 / 3 + 1, 1, 1.000_000_000_000_000_2],
        saturation: 0.1 * 3,
      },
      framing: { ...cue.framing, zoom: 1.1, pan: -0.05 },
    })),
    REEL_ID,
  )
  return made.ok ? (made.value.files[0]?.text ?? '') : ''
})()

const refusals = (text: string): readonly (readonly [number | undefined, string | undefined])[] => {
  const list = readCsv(text, TIMING)
  return list.ok ? [] : list.problems.map(({ at }) => [at?.line, at?.field] as const)
}

const saysOf = (text: string): string => {
  const list = readCsv(text, TIMING)
  return list.ok ? '' : list.problems.map(({ says }) => says).join('\n')
}

const GRADE_HEADS = [
  ...['first frame', 'lift R', 'lift G', 'lift B', 'gamma R', 'gamma G', 'gamma B'],
  ...['gain R', 'gain G', 'gain B', 'saturation'],
]

/** A list of one cue with these numbers of lift and gain in red. */
const one = (lift: string, gain: string, separator = ';', first = '0'): string =>
  [GRADE_HEADS, [first, lift, '0', '0', '1', '1', '1', gain, '1', '1', '1']]
    .map((cells) => `${cells.join(separator)}\n`)
    .join('')

describe('a ledger saved with other separators', () => {
  it.each([
    [';', ','],
    [';', '.'],
    ['\t', ','],
    ['\t', '.'],
  ] as const)('parted by %j, with decimals after %j, comes back to the last bit', (part, mark) => {
    const text = partedBy(LEDGER, part, mark)
    expect(text).toContain(`0${mark}30000000000000004`)
    expect(sniffText(text)).toBe('csv')
    const [ours, theirs] = [LEDGER, text].map((each) => readCsv(each, TIMING))
    expect(ours?.ok && ours.value.decisions).toHaveLength(6)
    expect(theirs).toEqual(ours)
  })

  it.each(['sep=;', '"sep=;"', '\ufeffsep=;', 'SEP=;'])(
    'passes over a first line %j, and counts lines truly',
    (first) => {
      const text = `${first}\r\n${one('0,25', 'x')}`
      expect(sniffText(text)).toBe('csv')
      expect(refusals(text)).toEqual([[3, 'gain R']])
      const list = readCsv(text.replace('x', '1,5'), TIMING)
      expect(list.ok && list.value.decisions[0]?.line).toBe(3)
      expect(list.ok && list.value.decisions[0]?.values.grade?.gain[0]).toBe(1.5)
    },
  )

  it('is told by the headings, and by commas wherever these name a column', () => {
    expect(ledgerForm('note,scene;cue;id\n').separator).toBe(',')
    expect(ledgerForm('note\tscene\n').separator).toBe('\t')
    expect(ledgerForm('"note";"scene"\n').separator).toBe(';')
    expect(ledgerForm('\n;;\nnote;scene\n').separator).toBe(';')
    expect(ledgerForm('note\n').separator).toBe(',')
    expect(ledgerForm('a;b\n')).toMatchObject({ separator: ',', named: 0 })
  })

  it('takes a decimal comma with an exponent, and none with quotes only', () => {
    const list = readCsv(one('"2,5E-03"', '1,5'), TIMING)
    expect(list.ok && list.value.decisions[0]?.values.grade?.lift[0]).toBe(0.0025)
  })

  it.each([
    ['both marks', one('1.234,5', '1')],
    ['both marks, the other way', one('1,234.5', '1')],
    ['thousands parted twice by commas', one('1,234,567', '1')],
    ['thousands parted twice by points', one('1.234.567', '1')],
    ['thousands parted by a space', one('1 234,5', '1')],
    ['thousands parted by an apostrophe', one("1'234,5", '1')],
    ['a point among commas', one('1.234', '1,5')],
    ['the same between tabs', one('1.234', '1,5', '\t')],
  ])('refuses %s, by line and column', (_, text) => {
    expect(refusals(text)).toEqual([[2, 'lift R']])
    expect(saysOf(text)).toContain('as in 1,25')
  })

  it.each(['12.000', '12,000', '1.000.000', '12,0'])(
    'refuses the frame %s, which may be thousands',
    (first) => {
      expect(refusals(one('0', '1', ';', first))).toEqual([[2, 'first frame']])
    },
  )

  it('leaves a ledger parted by commas as strict as it was', () => {
    expect(refusals(one('"0,5"', '1', ','))).toEqual([[2, 'lift R']])
    expect(saysOf(one('"0,5"', '1', ','))).toContain('decimal point, as in 1.25.')
    const list = readCsv(one('0.5', '1.5', ',', '12.0'), TIMING)
    expect(list.ok && list.value.decisions[0]?.recordSpan?.from).toBe(12)
  })

  it('names its separator where a row has too many cells', () => {
    expect(saysOf('note;scene\na;b;c\n')).toContain('put text with semicolons in quotes')
    expect(saysOf('note\tscene\na\tb\tc\n')).toContain('put text with tabs in quotes')
  })

  it('has its quotes undone whatever is in its cells', () => {
    const cell = fc.string({ unit: fc.constantFrom('"', ';', ',', '\t', '\r', '\n', 'a', 'é') })
    fc.assert(
      fc.property(
        fc.array(fc.array(cell, { minLength: 2, maxLength: 4 }), { maxLength: 4 }),
        fc.constantFrom(';' as const, '\t' as const),
        (rows, separator) => {
          const quoted = (each: string): string => `"${each.replaceAll('"', '""')}"`
          const text = rows.map((row) => `${row.map(quoted).join(separator)}\n`).join('')
          const read = parseCsv(text, 10, { separator, hasSeparatorLine: false })
          expect(read.ok && read.value.map(({ cells }) => cells)).toEqual(rows)
        },
      ),
      { seed: 1, numRuns: 300 },
    )
  })
})
