import { execFileSync } from 'node:child_process'
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { IDENTITY_FRAMING } from '../../src/core/picture/framing.ts'
import { frame } from '../../src/core/time/frame.ts'
import { rate } from '../../src/core/time/rate.ts'
import { EBU_R103_V3 } from '../../src/core/tolerance/profile.ts'
import { planesOfDelivered } from '../../src/core/transfer/planesOfDelivered.ts'
import type { Kernel, KernelInput } from '../../src/kernel/kernel.ts'
import { encodeDelivered, STILL_FORMS } from '../../src/media/encodeDelivered.ts'
import { openMediaNode } from '../../src/media/node/openMediaNode.ts'
import type { StillWords } from '../../src/media/stillPicture.ts'
import { builtKernel } from '../kernel/builtKernel.ts'
import { orThrow } from '../media-layer/support/orThrow.ts'

const CLIP = resolve(import.meta.dirname, '../media/video/street-dip-to-white-360p.mp4')
const folder = mkdtempSync(join(tmpdir(), 'reelwright-sequence-'))

let kernel: Kernel
let input: KernelInput
beforeAll(async () => {
  kernel = await builtKernel()
  const source = orThrow(await openMediaNode(CLIP))
  input = {
    planes: await source.read(frame(40)),
    coding: { matrix: 'bt709', range: 'narrow' },
    grade: { lift: [0.02, 0, -0.03], gamma: [1.2, 1, 0.9], gain: [1.1, 1, 0.95], saturation: 1.2 },
    framing: { ...IDENTITY_FRAMING, zoom: 1.1, pan: 0.03 },
  }
  source.close()
})
afterAll(() => rmSync(folder, { recursive: true, force: true }))

/** A file's samples of 16 bits as ffmpeg decodes them: planes G, B, R. */
const decodedBy = (path: string, format: string): Uint16Array => {
  const raw = execFileSync(
    'ffmpeg',
    ['-v', 'error', '-i', path, '-pix_fmt', format, '-f', 'rawvideo', '-'],
    { maxBuffer: 2 ** 27 },
  )
  return new Uint16Array(new Uint8Array(raw).buffer)
}

describe('what ffmpeg reads from a written picture is what the kernel laid out, to the code', () => {
  test.each([
    ['dpx', 'dpx', 'gbrp10le'],
    ['tiff', 'tif', 'gbrp16le'],
    ['png', 'png', 'gbrp16le'],
  ] as const)('%s', async (format, extension, pixels) => {
    const { width, height } = input.planes
    const form = STILL_FORMS[format]
    const { bytes } = kernel.deliver(input, { form })
    const laid = planesOfDelivered(bytes, form, { width, height })
    const words: StillWords = {
      name: 'a',
      signal: 'bt709',
      rate: rate(25),
      timecode: '00:00:01:15',
      pixelAspect: 1,
    }
    const path = join(folder, `a.${extension}`)
    writeFileSync(path, await encodeDelivered(bytes, { width, height }, words, format))
    const read = decodedBy(path, pixels)
    const [r, g, b] = laid.samples
    const count = width * height
    expect(read.subarray(0, count)).toEqual(Uint16Array.from(g))
    expect(read.subarray(count, 2 * count)).toEqual(Uint16Array.from(b))
    expect(read.subarray(2 * count)).toEqual(Uint16Array.from(r))
  })
})

type Range = { low: number; high: number }

const rangeOf = (samples: ArrayLike<number>): Range => {
  const range = { low: Infinity, high: -Infinity }
  for (let i = 0; i < samples.length; i++) {
    const code = samples[i] ?? 0
    range.low = Math.min(range.low, code)
    range.high = Math.max(range.high, code)
  }
  return range
}

test('ffmpeg’s signalstats finds the extremes that we measure', () => {
  const { width, height } = input.planes
  const form = { kind: 'planes', matrix: 'bt709', depth: 10, layout: '444' } as const
  const { bytes } = kernel.deliver(input, { form })
  const path = join(folder, 'planes.yuv')
  writeFileSync(path, bytes)
  const told = execFileSync('ffmpeg', [
    ...['-v', 'error', '-f', 'rawvideo', '-pix_fmt', 'yuv444p10le', '-s', `${width}x${height}`],
    ...['-i', path, '-vf', 'signalstats,metadata=print:file=-', '-f', 'null', '-'],
  ]).toString()
  const figure = (name: string): number =>
    Number(new RegExp(`signalstats\\.${name}=([\\d.]+)`, 'u').exec(told)?.[1])
  const { samples } = planesOfDelivered(bytes, form, { width, height })
  for (const [plane, name] of ['Y', 'U', 'V'].entries()) {
    const { low, high } = rangeOf(samples[plane as 0 | 1 | 2])
    expect([name, figure(`${name}MIN`), figure(`${name}MAX`)]).toEqual([name, low, high])
  }
  const unfiltered = { ...EBU_R103_V3, filtered: false }
  const { y } = kernel.measureLevels(input, 'bt709', unfiltered)
  expect(Math.abs(64 + 876 * y.low - figure('YMIN'))).toBeLessThanOrEqual(1)
  expect(Math.abs(64 + 876 * y.high - figure('YMAX'))).toBeLessThanOrEqual(1)
})
