import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { rate } from '../../src/core/time/rate.ts'
import { decodeDpx } from '../../src/media/dpx/decodeDpx.ts'
import { dpxFacts } from '../../src/media/dpx/dpxFacts.ts'
import { encodeDpx } from '../../src/media/dpx/encodeDpx.ts'
import { chanceFrom } from '../support/fuzzReader.ts'
import { channelsOf, type DpxForm, dpxOf, withFields } from './support/dpx.ts'
import { orThrow } from './support/orThrow.ts'

const samplesFor = (form: DpxForm, seed: number): readonly number[] => {
  const chance = chanceFrom(seed)
  const count = form.width * form.height * channelsOf(form)
  return Array.from({ length: count }, () => chance(2 ** form.depth))
}

const ORDERS = { 6: [0, 0, 0], 50: [0, 1, 2], 51: [0, 1, 2], 52: [3, 2, 1] } as const

/** The planes a file of these samples stands for, by the words of the standard. */
const planesOf = (samples: readonly number[], form: DpxForm): readonly number[][] => {
  const { width, height, orientation = 0 } = form
  return ORDERS[form.descriptor].map((channel) =>
    Array.from({ length: width * height }, (_, i) => {
      const [x, y] = [i % width, Math.floor(i / width)]
      const column = orientation & 1 ? width - 1 - x : x
      const line = orientation & 2 ? height - 1 - y : y
      return samples[(line * width + column) * channelsOf(form) + channel] ?? -1
    }),
  )
}

const form: fc.Arbitrary<DpxForm> = fc.record({
  width: fc.integer({ min: 1, max: 9 }),
  height: fc.integer({ min: 1, max: 5 }),
  depth: fc.constantFrom(8, 10, 12, 16),
  packing: fc.constantFrom(0, 1, 2),
  descriptor: fc.constantFrom(6, 50, 51, 52),
  isLittleEndian: fc.boolean(),
  orientation: fc.integer({ min: 0, max: 3 }),
  linePadding: fc.constantFrom(0, 4, 7),
  dataOffset: fc.constantFrom(2048, 2050, 8192),
})

test('every sample is read at its place, however the file is laid', () => {
  fc.assert(
    fc.property(form, fc.nat(), (laid, seed) => {
      // Samples of 8 bits lie in the order of bytes, whatever the order of the file.
      const plain = laid.depth === 8 ? { ...laid, isLittleEndian: false } : laid
      const samples = samplesFor(plain, seed)
      const { planes } = orThrow(decodeDpx(dpxOf(samples, plain), 'a.dpx'))
      const { width, height, depth } = plain
      expect(planes).toMatchObject({ width, height, depth, layout: 'rgb' })
      expect(planes.samples.map((plane) => [...plane])).toEqual(planesOf(samples, plain))
    }),
    { seed: 1, numRuns: 600 },
  )
})

test('what is written comes back, sample by sample and word by word', () => {
  const picture = fc.record({
    width: fc.integer({ min: 1, max: 20 }),
    height: fc.integer({ min: 1, max: 12 }),
    isLittleEndian: fc.boolean(),
    transfer: fc.constantFrom(0, 1, 6, 8),
    num: fc.constantFrom(24, 25, 30, 16),
    isThousandAndOne: fc.boolean(),
    frames: fc.integer({ min: 0, max: 24 }),
    pixelAspect: fc.integer({ min: 5000, max: 20_000 }).map((n) => n / 10_000),
  })
  fc.assert(
    fc.property(picture, fc.nat(), (given, seed) => {
      const chance = chanceFrom(seed)
      const plane = () =>
        Uint16Array.from({ length: given.width * given.height }, () => chance(1024))
      const samples = [plane(), plane(), plane()] as const
      const stated = given.isThousandAndOne ? rate(given.num * 1000, 1001) : rate(given.num)
      const timecode = `10:59:08:${String(given.frames).padStart(2, '0')}`
      const bytes = encodeDpx({
        ...given,
        samples,
        rate: stated,
        timecode,
        colorimetric: given.transfer,
        name: 'a.dpx',
      })
      const { header, planes } = orThrow(decodeDpx(bytes, 'a.dpx'))
      expect(planes.samples).toEqual([...samples])
      expect(header).toMatchObject({
        isBigEndian: !given.isLittleEndian,
        transfer: given.transfer,
        rate: stated,
        timecode,
        range: 'full',
        pixelAspect: given.pixelAspect,
      })
    }),
    { seed: 1, numRuns: 200 },
  )
})

const PLAIN: DpxForm = { width: 5, height: 3, depth: 10, packing: 1, descriptor: 50, transfer: 1 }
const whole = dpxOf(samplesFor(PLAIN, 1), PLAIN)

describe('what a header states', () => {
  const headerOf = (...fields: Parameters<typeof withFields>[1]) =>
    orThrow(decodeDpx(withFields(whole, fields), 'a.dpx')).header
  const float = (value: number): number => {
    const view = new DataView(new ArrayBuffer(4))
    view.setFloat32(0, value)
    return view.getUint32(0)
  }
  test('nothing of what is not filled in', () => {
    expect(headerOf()).toMatchObject({
      rate: undefined,
      timecode: undefined,
      range: 'full',
      pixelAspect: 1,
    })
  })
  test('a rate of film comes before one of television, and must be one', () => {
    expect(headerOf([1724, 4, float(24)], [1940, 4, float(25)]).rate).toEqual(rate(24))
    expect(headerOf([1724, 4, 0], [1940, 4, float(29.97)]).rate).toEqual(rate(30_000, 1001))
    expect(headerOf([1724, 4, float(1e9)]).rate).toBeUndefined()
    expect(headerOf([1724, 4, float(Number.NaN)]).rate).toBeUndefined()
  })
  test('a timecode of eight digits, and none of other fields', () => {
    expect(headerOf([1920, 4, 0x01_02_03_04]).timecode).toBe('01:02:03:04')
    expect(headerOf([1920, 4, 0x01_72_03_04]).timecode).toBeUndefined()
    expect(headerOf([1920, 4, 0x0a_02_03_04]).timecode).toBeUndefined()
  })
  test('narrow range where black and white are the codes of video', () => {
    expect(headerOf([1952, 4, float(64)], [1964, 4, float(940)]).range).toBe('narrow')
    expect(headerOf([784, 4, 64], [792, 4, 940]).range).toBe('narrow')
    expect(headerOf([784, 4, 95], [792, 4, 685]).range).toBe('full')
  })
  test('printing density where the transfer is that or logarithmic', () => {
    expect(dpxFacts(headerOf()).scanHint).toBe('printing-density')
    expect(dpxFacts(headerOf([801, 1, 3])).scanHint).toBe('printing-density')
    expect(dpxFacts(headerOf([801, 1, 6]))).not.toHaveProperty('scanHint')
  })
  test('a header without film and television is whole too', () => {
    const short = dpxOf(samplesFor(PLAIN, 1), PLAIN)
    const bytes = new Uint8Array(short.length - 384)
    bytes.set(short.subarray(0, 1664))
    bytes.set(short.subarray(2048), 1664)
    const moved = withFields(bytes, [
      [4, 4, 1664],
      [808, 4, 1664],
    ])
    const { header, planes } = orThrow(decodeDpx(moved, 'a.dpx'))
    expect(planes).toEqual(orThrow(decodeDpx(whole, 'a.dpx')).planes)
    expect(header).toMatchObject({ rate: undefined, timecode: undefined, range: 'full' })
  })
})

test('lines that do not begin on words are read where the file has no room for them to', () => {
  const laid: DpxForm = { ...PLAIN, depth: 8, isUnaligned: true }
  const samples = samplesFor(laid, 4)
  const { planes } = orThrow(decodeDpx(dpxOf(samples, laid), 'a.dpx'))
  expect(planes.samples.map((plane) => [...plane])).toEqual(planesOf(samples, laid))
})

test('alpha as an element of its own is left out', () => {
  const two = withFields(whole, [
    [770, 2, 2],
    [872, 1, 4],
  ])
  expect(orThrow(decodeDpx(two, 'a.dpx')).planes).toEqual(orThrow(decodeDpx(whole, 'a.dpx')).planes)
})

test.each([
  ['no DPX', [[0, 4, 0x12345678]], 'unknown-format', 0],
  ['a picture within the header', [[4, 4, 100]], 'malformed', 4],
  ['samples within the header', [[808, 4, 100]], 'malformed', 808],
  ['encryption', [[660, 4, 77]], 'cannot-decode', 660],
  ['columns for lines', [[768, 2, 4]], 'cannot-decode', 768],
  ['no elements', [[770, 2, 0]], 'malformed', 770],
  ['too many elements', [[770, 2, 9]], 'malformed', 770],
  [
    'two elements of colours',
    [
      [770, 2, 2],
      [872, 1, 50],
    ],
    'cannot-decode',
    872,
  ],
  ['no width', [[772, 4, 0]], 'malformed', 772],
  ['an absurd height', [[776, 4, 0x7fffffff]], 'too-large', 776],
  ['Y′CbCr 4:2:2', [[800, 1, 100]], 'cannot-decode', 800],
  ['samples with a sign', [[780, 4, 1]], 'cannot-decode', 780],
  ['64 bits a sample', [[803, 1, 64]], 'cannot-decode', 803],
  ['an unknown packing', [[804, 2, 5]], 'cannot-decode', 804],
  ['run-length encoding', [[806, 2, 1]], 'cannot-decode', 806],
  ['more lines than the file holds', [[776, 4, 4]], 'malformed', 2048 + 60],
  [
    'the largest picture there can be',
    [
      [772, 4, 65_535],
      [776, 4, 65_535],
    ],
    'malformed',
    2048 + 60,
  ],
] as const)('%s is refused by the byte that says so', (_, fields, code, byte) => {
  const read = decodeDpx(withFields(whole, fields), 'a.dpx')
  expect(read).toMatchObject({ ok: false, problems: [{ code, at: { file: 'a.dpx', byte } }] })
})

test('a file cut short anywhere is refused at its end, before any memory is taken for it', () => {
  for (const length of [0, 3, 4, 700, 1663, 2047, 2048, whole.length - 1]) {
    const read = decodeDpx(whole.slice(0, length), 'a.dpx')
    const byte = length < 4 ? 0 : length
    expect(read).toMatchObject({ ok: false, problems: [{ at: { byte } }] })
  }
})
