import { describe, expect, it } from 'vitest'
import { readXml } from '../../../src/core/base/xmlReader.ts'
import { ownScanOf } from '../../../src/core/formats/cdl/ownWords.ts'
import { readCdlList } from '../../../src/core/formats/cdl/readCdlList.ts'
import { readClf } from '../../../src/core/formats/clf/readClf.ts'
import { readCsv } from '../../../src/core/formats/csv/readCsv.ts'
import { withLineFeeds } from '../../../src/core/formats/edl/edlWalk.ts'
import { readEdl } from '../../../src/core/formats/edl/readEdl.ts'
import { fileNameOf } from '../../../src/core/formats/listNames.ts'
import { parseDecimal } from '../../../src/core/formats/parseDecimal.ts'
import { readDecimals } from '../../../src/core/formats/readDecimals.ts'
import { sniffText } from '../../../src/core/formats/sniffText.ts'
import { frame } from '../../../src/core/time/frame.ts'
import { parsePosition } from '../../../src/core/time/parsePosition.ts'
import { rate } from '../../../src/core/time/rate.ts'
import { array, DEPTHS, operator } from '../../support/clfTexts.ts'
import { sampleReel } from '../../support/sampleJob.ts'

// Time that grows with the square of the length takes minutes here, and so runs into the limit of
// a test's time.
const MILLION = 1_000_000
const DIGITS = '1'.repeat(MILLION)

const TIMING = { rate: rate(25), isDropFrame: false }

describe('a text of a million characters is read or refused', () => {
  it.each([
    ['digits', DIGITS],
    ['digits and a letter', `${DIGITS}x`],
    ['digits, point, digits and a letter', `${DIGITS}.${DIGITS}x`],
    ['digits of an exponent and a letter', `1e${DIGITS}x`],
  ])('as a decimal: %s', (_, word) => {
    expect(parseDecimal(word)).toBeNaN()
    expect(readDecimals(`1 ${word}`, 9)).toMatchObject({ values: [1], wrongAt: 2 })
    const csv = readCsv(`ramp,scene\n${word},a\n`, TIMING)
    expect(!csv.ok && csv.problems[0]).toMatchObject({
      code: 'too-large',
      at: { line: 2, field: 'ramp' },
    })
    const cdl = readCdlList(
      `<ColorCorrection id="a">\n<SOPNode><Slope>${word} 1 1</Slope></SOPNode></ColorCorrection>`,
      TIMING,
    )
    expect(!cdl.ok && cdl.problems[0].at?.line).toBe(2)
    const clf = readClf(operator('Matrix', DEPTHS, array('3 3', word)))
    expect(!clf.ok && clf.problems[0].at?.line).toBe(4)
  })

  it('as a number of a list of events', () => {
    const event = '001  AX  V  C  00:00:00:00 00:00:01:00 01:00:00:00 01:00:01:00\n'
    const edl = readEdl(`${event}* ASC_SAT ${DIGITS}x\n`, TIMING)
    expect(edl.ok && edl.value.notTaken[0]?.at?.line).toBe(2)
  })

  it('as a timecode, which is not shown whole', () => {
    for (const label of [DIGITS, `10:00:00:00${' '.repeat(MILLION)}x`]) {
      const csv = readCsv(`timecode in,note\n"${label}",a\n`, TIMING)
      if (csv.ok) throw new Error('read')
      expect(csv.problems[0].at).toEqual({ line: 2, field: 'timecode in' })
      expect(csv.problems[0].says.length).toBeLessThan(300)
    }
  })

  it('as a place on a reel', () => {
    const reel = sampleReel()
    const blanks = ' '.repeat(MILLION)
    for (const text of [`${blanks}x`, `1+${blanks}x`, `1 ft 2${blanks}x`, `1${blanks}x`, DIGITS])
      expect(parsePosition(text, reel, frame(0)).ok).toBe(false)
    expect(parsePosition(`${blanks}fr${blanks}7${blanks}`, reel, frame(0))).toMatchObject({
      value: 7,
    })
    expect(parsePosition(`2${blanks}ft${blanks}3${blanks}fr${blanks}`, reel, frame(0))).toEqual(
      parsePosition('2+3', reel, frame(0)),
    )
  })

  it('as the end of lines', () => {
    expect(withLineFeeds(`${'\r'.repeat(MILLION)}x`)).toBe(`${'\n'.repeat(MILLION)}x`)
    expect(withLineFeeds('a\rb\r\nc\r\r\nd\r\re\n\nf')).toBe('a\nb\nc\nd\n\ne\n\nf')
  })

  it('as the beginning of a file', () => {
    const blanks = ' '.repeat(MILLION)
    for (const text of [
      `<!DOCTYPE a${blanks}`,
      `<!DOCTYPE a [${blanks}]${blanks}`,
      `${'<!-- -->'.repeat(100_000)}<a`,
      `<${'a'.repeat(MILLION)}`,
      ';'.repeat(MILLION),
      `1 ${'a '.repeat(MILLION)}`,
    ])
      expect(sniffText(text)).toBeUndefined()
    expect(sniffText(`<!DOCTYPE a${blanks}[${blanks}]${blanks}>${blanks}<ProcessList/>`)).toBe(
      'clf',
    )
  })

  it('as the words of a list', () => {
    const ending = "Values apply to non-linear R'G'B' without clamping."
    const scan = `${', scan '.repeat(MILLION / 7)}x`
    const scanOf = (text: string) => ownScanOf([{ name: 'Description', text }])
    expect(scanOf(`a${scan}${ending}`)).toBeUndefined()
    expect(scanOf(`job, reel 1, scan a, scan b. ${ending}`)).toBe('a, scan b')
    expect(scanOf(`job, reel 1, scan . ${ending}`)).toBe('')
    expect(scanOf(`job, reel 1, scan ${ending}`)).toBeUndefined()
    expect(fileNameOf(sampleReel({ name: `--a${'.'.repeat(MILLION)}b..` }))).toBe(
      `a${'.'.repeat(MILLION)}b`,
    )
  })

  it('as XML with an “&” wherever one can stand', () => {
    for (const [text, line] of [
      [`<a>${'&amp;'.repeat(MILLION / 5)}\n& </a>`, 2],
      [`<a>${'&'.repeat(MILLION)}</a>`, 1],
      [`<a>\n&${'a'.repeat(MILLION)}</a>`, 2],
      [`<a>\n\n${'<!--'.repeat(MILLION / 4)}`, 3],
    ] as const) {
      const read = readXml(text)
      expect(!read.ok && read.problems[0].at?.line).toBe(line)
    }
  })
})
