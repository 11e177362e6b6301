import { execFileSync } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, expect, test } from 'vitest'
import type { RgbPicture } from '../../src/core/picture/rgbPicture.ts'
import { rate } from '../../src/core/time/rate.ts'
import { decodeDpx } from '../../src/media/dpx/decodeDpx.ts'
import { encodeDpx } from '../../src/media/dpx/encodeDpx.ts'
import { encodeStill } from '../../src/media/encodeStill.ts'
import { dpxOf } from '../media-layer/support/dpx.ts'
import { orThrow } from '../media-layer/support/orThrow.ts'
import { chanceFrom } from '../support/fuzzReader.ts'

const folder = mkdtempSync(join(tmpdir(), 'reelwright-pictures-'))
afterAll(() => rmSync(folder, { recursive: true, force: true }))

const ffmpeg = (args: readonly string[], input?: Uint8Array): Uint8Array =>
  new Uint8Array(
    execFileSync('ffmpeg', ['-v', 'error', ...args], {
      maxBuffer: 2 ** 28,
      ...(input ? { input } : {}),
    }),
  )

/** A picture file as raw samples of one of ffmpeg's formats. */
const rawBy = (path: string, format: string): Uint8Array =>
  ffmpeg(['-i', path, '-pix_fmt', format, '-f', 'rawvideo', '-'])

/** Odd in width, so that lines do not end with a word. */
const WIDTH = 37
const HEIGHT = 23
const COUNT = WIDTH * HEIGHT

const randomBytes = (length: number): Uint8Array => {
  const chance = chanceFrom(5)
  return Uint8Array.from({ length }, () => chance(256))
}

/** Samples of a raw picture as ffmpeg lays them: words of 16 bits in its byte order, or bytes. */
const samplesOf = (raw: Uint8Array, depth: number, isBig: boolean): readonly number[] => {
  if (depth === 8) return [...raw]
  const view = new DataView(raw.buffer, raw.byteOffset, raw.byteLength)
  return Array.from({ length: raw.length / 2 }, (_, i) => view.getUint16(2 * i, !isBig))
}

/** Where R′, G′, B′ are: in planes, or so far apart pixel by pixel. */
type Laid =
  | { readonly planes: readonly number[] }
  | { readonly step: number; readonly from: readonly number[] }

const GBR: Laid = { planes: [2, 0, 1] }

const KINDS: readonly (readonly [format: string, depth: number, isBig: boolean, laid: Laid])[] = [
  ['gray', 8, false, { planes: [0, 0, 0] }],
  ['rgb24', 8, false, { step: 3, from: [0, 1, 2] }],
  ['rgba', 8, false, { step: 4, from: [0, 1, 2] }],
  ['abgr', 8, false, { step: 4, from: [3, 2, 1] }],
  ['gray16le', 16, false, { planes: [0, 0, 0] }],
  ['gray16be', 16, true, { planes: [0, 0, 0] }],
  ['rgb48le', 16, false, { step: 3, from: [0, 1, 2] }],
  ['rgb48be', 16, true, { step: 3, from: [0, 1, 2] }],
  ['rgba64le', 16, false, { step: 4, from: [0, 1, 2] }],
  ['rgba64be', 16, true, { step: 4, from: [0, 1, 2] }],
  ['gbrp10le', 10, false, GBR],
  ['gbrp10be', 10, true, GBR],
  ['gbrp12le', 12, false, GBR],
  ['gbrp12be', 12, true, GBR],
]

test.each(KINDS)('a DPX picture that ffmpeg writes of %s is read to the same codes', (...kind) => {
  const [format, depth, isBig, laid] = kind
  const channels = 'planes' in laid ? new Set(laid.planes).size : laid.step
  const raw = randomBytes(COUNT * channels * (depth > 8 ? 2 : 1))
  if (depth === 10 || depth === 12)
    for (let i = isBig ? 0 : 1; i < raw.length; i += 2) raw[i] = (raw[i] ?? 0) >> (16 - depth)
  const path = join(folder, `${format}.dpx`)
  const size = ['-f', 'rawvideo', '-s', `${WIDTH}x${HEIGHT}`, '-pix_fmt', format, '-i', '-']
  ffmpeg([...size, '-y', path], raw)
  const { planes } = orThrow(decodeDpx(readFileSync(path), path))
  const given = samplesOf(raw, depth, isBig)
  expect(planes).toMatchObject({ width: WIDTH, height: HEIGHT, depth, layout: 'rgb' })
  for (const [channel, samples] of planes.samples.entries()) {
    const expected = Array.from({ length: COUNT }, (_, i) =>
      'planes' in laid
        ? given[(laid.planes[channel] ?? 0) * COUNT + i]
        : given[i * laid.step + (laid.from[channel] ?? 0)],
    )
    expect([...samples]).toEqual(expected)
  }
})

const CODES = (() => {
  const chance = chanceFrom(9)
  const plane = () => Uint16Array.from({ length: COUNT }, () => chance(1024))
  return [plane(), plane(), plane()] as const
})()

test.each([false, true])(
  'DPX written here is read by ffmpeg (little-endian: %s)',
  (isLittleEndian) => {
    const path = join(folder, `ours-${isLittleEndian}.dpx`)
    writeFileSync(
      path,
      encodeDpx({
        width: WIDTH,
        height: HEIGHT,
        samples: CODES,
        transfer: 6,
        colorimetric: 6,
        name: 'ours.dpx',
        rate: rate(24_000, 1001),
        timecode: '10:04:05:17',
        pixelAspect: 1.0667,
        isLittleEndian,
      }),
    )
    const words = samplesOf(rawBy(path, 'gbrp10le'), 10, false)
    for (const [channel, at] of [2, 0, 1].entries())
      expect(words.slice(at * COUNT, (at + 1) * COUNT)).toEqual([...(CODES[channel] ?? [])])
    const asked = [
      'stream=sample_aspect_ratio',
      'frame=color_transfer,color_range,color_primaries',
      'frame_tags=timecode',
    ].join(':')
    const args = ['-v', 'error', '-of', 'json', '-show_frames', '-show_entries', asked, path]
    const probed = JSON.parse(execFileSync('ffprobe', args, { encoding: 'utf8' }))
    expect(probed.streams[0]).toMatchObject({ sample_aspect_ratio: '10667:10000' })
    expect(probed.frames[0]).toMatchObject({
      color_range: 'pc',
      color_primaries: 'bt709',
      color_transfer: 'bt709',
      tags: { timecode: '10:04:05:17' },
    })
  },
)

test.each([
  [12, 0, 'gbrp12le'],
  [12, 1, 'gbrp12le'],
  [10, 1, 'gbrp10le'],
  [10, 2, 'gbrp10le'],
] as const)('DPX of %i bits in packing %i is read as ffmpeg reads it', (depth, packing, pixels) => {
  const chance = chanceFrom(depth + packing)
  const samples = Array.from({ length: 3 * COUNT }, () => chance(2 ** depth))
  const form = { width: WIDTH, height: HEIGHT, depth, packing, descriptor: 50 } as const
  const path = join(folder, `packed-${depth}-${packing}.dpx`)
  writeFileSync(path, dpxOf(samples, form))
  const { planes } = orThrow(decodeDpx(readFileSync(path), path))
  const words = samplesOf(rawBy(path, pixels), depth, false)
  for (const [channel, at] of [2, 0, 1].entries())
    expect([...(planes.samples[channel] ?? [])]).toEqual(words.slice(at * COUNT, (at + 1) * COUNT))
})

const PICTURE: RgbPicture = (() => {
  const chance = chanceFrom(3)
  const plane = () => Float64Array.from({ length: COUNT }, () => chance(65_536) / 65_535)
  return { width: WIDTH, height: HEIGHT, r: plane(), g: plane(), b: plane() }
})()

test.each([
  ['png', 'rgb48be'],
  ['tiff', 'rgb48le'],
] as const)(
  'a frame saved as %s is read by ffmpeg to the codes it was written with',
  async (...kind) => {
    const [format, pixels] = kind
    const words = {
      name: 'a',
      signal: 'bt709',
      rate: rate(25),
      timecode: '10:00:00:00',
      pixelAspect: 1.0667,
    } as const
    const path = join(folder, `ours.${format}`)
    const { bytes, clipped } = await encodeStill(PICTURE, words, format)
    writeFileSync(path, bytes)
    expect(clipped).toBe(0)
    const expected = [...PICTURE.r].flatMap((r, i) =>
      [r, PICTURE.g[i] ?? 0, PICTURE.b[i] ?? 0].map((level) => Math.round(level * 65_535)),
    )
    expect(samplesOf(rawBy(path, pixels), 16, format === 'png')).toEqual(expected)
  },
)
