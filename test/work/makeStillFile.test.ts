import { readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import { expect, test } from 'vitest'
import { IDENTITY_GRADE } from '../../src/core/colour/grade.ts'
import { PRINT_BASE } from '../../src/core/film/filmBase.ts'
import type { StillFormat } from '../../src/core/formats/stillFormats.ts'
import { decodePlanes } from '../../src/core/picture/decodePlanes.ts'
import { deliverPicture } from '../../src/core/picture/deliverPicture.ts'
import { IDENTITY_FRAMING } from '../../src/core/picture/framing.ts'
import type { Coding, Planes } from '../../src/core/picture/planes.ts'
import { frame } from '../../src/core/time/frame.ts'
import { rate } from '../../src/core/time/rate.ts'
import { decodePng } from '../../src/media/decodePng.ts'
import { decodeTiff } from '../../src/media/decodeTiff.ts'
import { decodeDpx } from '../../src/media/dpx/decodeDpx.ts'
import { stillCodes } from '../../src/media/stillPicture.ts'
import { makeStillFile } from '../../src/work/makeStillFile.ts'
import { orThrow } from '../media-layer/support/orThrow.ts'
import { chanceFrom } from '../support/fuzzReader.ts'

const WORDS = { name: 'a', rate: rate(25), timecode: '10:00:04:07' } as const

const VALUES = {
  grade: { ...IDENTITY_GRADE, lift: [0.02, -0.01, 0.03], gamma: [1.1, 0.95, 1], saturation: 1.2 },
  framing: { ...IDENTITY_FRAMING, zoom: 1.1, pan: 0.02, rotation: 1.5, blanking: 0.05 },
} as const

const decoded = async (bytes: Uint8Array, format: StillFormat): Promise<Planes> => {
  if (format === 'dpx') return orThrow(decodeDpx(bytes, 'a')).planes
  return orThrow(await (format === 'png' ? decodePng(bytes, 'a') : decodeTiff(bytes, 'a')))
}

const photograph = async (): Promise<Planes> => {
  const path = resolve(import.meta.dirname, '../media/stills/still-life-128.png')
  return orThrow(await decodePng(readFileSync(path), path))
}

/** A picture of 10-bit Y′CbCr 4:2:0, odd in size and higher than the bands that are worked on. */
const noise = (): Planes => {
  const chance = chanceFrom(11)
  const plane = (count: number) => Uint16Array.from({ length: count }, () => chance(1024))
  const samples = [plane(33 * 131), plane(17 * 66), plane(17 * 66)] as const
  return { width: 33, height: 131, layout: '420', depth: 10, samples }
}

const SCANS: readonly (readonly [string, () => Promise<Planes> | Planes, Coding])[] = [
  ['a photograph of 8 bits', photograph, { matrix: 'bt709', range: 'full', base: PRINT_BASE }],
  [
    'noise of 10 bits, 4:2:0, as printing density',
    noise,
    {
      matrix: 'bt601',
      range: 'narrow',
      base: { ...PRINT_BASE, scan: 'printing-density' },
      pixelAspect: 1.0667,
    },
  ],
]

for (const [name, scan, coding] of SCANS)
  test.each(['png', 'tiff', 'dpx'] as const)(
    `${name}: as delivered, %s holds the reference’s own codes`,
    async (format) => {
      const planes = await scan()
      const made = await makeStillFile(planes, {
        frame: frame(3),
        coding,
        values: VALUES,
        format,
        words: WORDS,
      })
      const depth = format === 'dpx' ? 10 : 16
      const delivered = deliverPicture(planes, coding, VALUES.grade, VALUES.framing)
      const { samples, clipped } = stillCodes(delivered, depth)
      const read = await decoded(made.bytes, format)
      expect(read).toMatchObject({ width: planes.width, height: planes.height, depth })
      expect(read.samples).toEqual([...samples])
      expect(made.clipped).toBe(clipped)
    },
  )

test('as scanned, a full-range DPX of 10 bits keeps every code, and its kind of levels', async () => {
  const chance = chanceFrom(2)
  const plane = () => Uint16Array.from({ length: 40 * 30 }, () => chance(1024))
  const planes = {
    width: 40,
    height: 30,
    layout: 'rgb',
    depth: 10,
    samples: [plane(), plane(), plane()],
  } as const
  const request = (scan: 'print' | 'printing-density' | 'negative') => ({
    frame: frame(0),
    coding: { matrix: 'bt709', range: 'full', base: { ...PRINT_BASE, scan } } as const,
    values: undefined,
    format: 'dpx' as const,
    words: WORDS,
  })
  for (const [scan, transfer] of [
    ['print', 6],
    ['printing-density', 1],
    ['negative', 0],
  ] as const) {
    const made = await makeStillFile(planes, request(scan))
    const read = orThrow(decodeDpx(made.bytes, 'a'))
    expect(read.planes).toEqual(planes)
    expect(read.header).toMatchObject({ transfer, rate: rate(25), timecode: WORDS.timecode })
    expect(made.clipped).toBe(0)
  }
})

test('what lies past black and peak is clipped there, and its pixels are counted', async () => {
  const planes = noise()
  const coding = { matrix: 'bt709', range: 'narrow' } as const
  const { r, g, b } = decodePlanes(planes, coding)
  const isPast = (level: number | undefined) =>
    level !== undefined && (level < -0.5 / 65_535 || level >= 1 + 0.5 / 65_535)
  const past = [...r].filter((level, i) => [level, g[i], b[i]].some(isPast)).length
  const request = { frame: frame(0), coding, values: undefined, words: WORDS } as const
  const made = await makeStillFile(planes, { ...request, format: 'tiff' })
  expect(past).toBeGreaterThan(100)
  expect(made.clipped).toBe(past)
})
