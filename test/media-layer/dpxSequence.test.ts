import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { frame } from '../../src/core/time/frame.ts'
import { rate } from '../../src/core/time/rate.ts'
import { decodePng } from '../../src/media/decodePng.ts'
import { encodeDpx } from '../../src/media/dpx/encodeDpx.ts'
import { MediaError } from '../../src/media/mediaError.ts'
import { openMediaNode } from '../../src/media/node/openMediaNode.ts'
import { numberIn, shapeFaults } from './support/numberedClips.ts'
import { PICTURE_NUMBERS } from './support/numberedPictures.ts'
import { orThrow } from './support/orThrow.ts'

const PNG16 = resolve(import.meta.dirname, '../media/numbered/png16')
const folder = mkdtempSync(join(tmpdir(), 'dpx-'))
afterAll(() => rmSync(folder, { recursive: true }))

beforeAll(async () => {
  mkdirSync(join(folder, 'reel'))
  for (const n of PICTURE_NUMBERS) {
    const path = join(PNG16, `reel_00${n}.png`)
    const { width, height, samples } = orThrow(await decodePng(readFileSync(path), path))
    const [r, g, b] = samples.map((plane) => Uint16Array.from(plane, (code) => code >> 6))
    if (!r || !g || !b) throw new Error('three planes')
    const bytes = encodeDpx({
      width,
      height,
      samples: [r, g, b],
      transfer: 1,
      colorimetric: 1,
      name: 'reel',
      rate: rate(24),
      timecode: `01:00:03:${n - 80}`.replace(/:(\d)$/u, ':0$1'),
      pixelAspect: 1.5,
      isLittleEndian: n % 2 === 0,
    })
    writeFileSync(join(folder, 'reel', `reel_00${n}.dpx`), bytes)
  }
})

test.each(['reel', 'reel/reel_0088.dpx', 'reel/reel_####.dpx'])(
  '%s opens the sequence, with what its first header states',
  async (name) => {
    const source = orThrow(await openMediaNode(join(folder, name)))
    expect(source.facts).toMatchObject({
      name: 'reel_####.dpx',
      container: 'DPX sequence',
      codec: 'DPX',
      depth: 10,
      layout: 'rgb',
      frames: 5,
      rate: rate(24),
      range: 'full',
      matrix: 'bt709',
      displayAspect: (64 * 1.5) / 48,
      scanHint: 'printing-density',
      startTimecode: '01:00:03:06',
    })
    const read: number[] = []
    for await (const { planes } of source.readRange(frame(0), frame(5))) {
      read.push(numberIn(planes))
      expect(shapeFaults(planes, source.facts)).toEqual([])
    }
    expect(read).toEqual(PICTURE_NUMBERS)
  },
)

test('a picture damaged further on is told when it is reached, by its name and byte', async () => {
  const path = join(folder, 'reel/reel_0089.dpx')
  const whole = readFileSync(path)
  writeFileSync(path, whole.subarray(0, 5000))
  const source = orThrow(await openMediaNode(join(folder, 'reel')))
  await source.read(frame(2))
  const failed = await source.read(frame(3)).catch((error: unknown) => error)
  writeFileSync(path, whole)
  expect(failed).toBeInstanceOf(MediaError)
  expect(failed).toMatchObject({ problem: { at: { file: 'reel_0089.dpx', byte: 5000 } } })
})

test('a sequence that is not there is said to hold no pictures', async () => {
  const opened = await openMediaNode(join(folder, 'reel/other_####.dpx'))
  expect(opened.ok ? '' : opened.problems[0].says).toMatch(/holds no DPX, PNG or TIFF pictures/u)
})
