import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { stillCommand } from '../../src/cli/commands/still.ts'
import type { Terminal } from '../../src/cli/terminal.ts'
import { IDENTITY_GRADE } from '../../src/core/colour/grade.ts'
import { PRINT_BASE } from '../../src/core/film/filmBase.ts'
import { writeJob } from '../../src/core/formats/job/writeJob.ts'
import { deliverPicture } from '../../src/core/picture/deliverPicture.ts'
import { IDENTITY_FRAMING } from '../../src/core/picture/framing.ts'
import { rate } from '../../src/core/time/rate.ts'
import { decodePng } from '../../src/media/decodePng.ts'
import { decodeDpx } from '../../src/media/dpx/decodeDpx.ts'
import { encodeDpx } from '../../src/media/dpx/encodeDpx.ts'
import { stillCodes } from '../../src/media/stillPicture.ts'
import { orThrow } from '../media-layer/support/orThrow.ts'
import { chanceFrom } from '../support/fuzzReader.ts'
import { sampleJob, sampleReel } from '../support/sampleJob.ts'

let folder = ''
const GRADE = { ...IDENTITY_GRADE, gain: [1.1, 1, 0.9], saturation: 0.7 } as const
const BASE = { ...PRINT_BASE, scan: 'printing-density' } as const

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'reelwright-still-'))
  const chance = chanceFrom(6)
  const plane = () => Uint16Array.from({ length: 32 * 18 }, () => chance(1024))
  for (let n = 1; n <= 4; n++) {
    const samples = [plane(), plane(), plane()] as const
    const picture = { width: 32, height: 18, samples, transfer: 1, colorimetric: 1, name: 'scan' }
    writeFileSync(join(folder, `scan_${n}.dpx`), encodeDpx({ ...picture, rate: rate(24) }))
  }
  const { media } = sampleReel()
  const reel = sampleReel({
    frames: 4,
    rate: rate(24),
    startCount: 240,
    base: BASE,
    media: {
      ...media,
      name: 'scan_####.dpx',
      width: 32,
      height: 18,
      displayAspect: 32 / 18,
      depth: 10,
      layout: 'rgb',
      range: 'full',
    },
  })
  const job = sampleJob([0, 2], (cue, i) => (i === 1 ? { ...cue, grade: GRADE } : cue), reel)
  writeFileSync(join(folder, 'job.json'), writeJob(job))
})
afterAll(() => rmSync(folder, { recursive: true, force: true }))

const still = async (...args: readonly string[]) => {
  const printed: unknown[] = []
  const notes: string[] = []
  const terminal: Terminal = {
    print: (text) => printed.push(text),
    json: (value) => printed.push(value),
    problems: () => undefined,
    note: (text) => notes.push(text),
    pace: () => undefined,
    clearPace: () => undefined,
  }
  const done = await stillCommand([join(folder, 'job.json'), ...args], terminal)
  return { done, printed, notes }
}

const scanned = (n: number) => orThrow(decodeDpx(readFileSync(join(folder, `scan_${n}.dpx`)), 'a'))

test('a frame by its timecode is delivered as the reference has it', async () => {
  const out = join(folder, 'out.png')
  const { done, printed } = await still('--at', '00:00:10:02', '--out', out, '--json')
  expect(done).toEqual({ ok: true, value: 0 })
  const coding = { matrix: 'bt709', range: 'full', base: BASE } as const
  const delivered = deliverPicture(scanned(3).planes, coding, GRADE, IDENTITY_FRAMING)
  const { samples, clipped } = stillCodes(delivered, 16)
  expect(orThrow(await decodePng(readFileSync(out), out)).samples).toEqual([...samples])
  const told = { written: out, frame: 2, timecode: '00:00:10:02', stage: 'graded', clipped }
  expect(printed).toEqual([told])
})

test('a frame by its number goes out as scanned, code for code, and says so', async () => {
  const out = join(folder, 'out.dpx')
  const { done, printed } = await still('--at', '3', '--out', out, '--scanned')
  expect(done.ok).toBe(true)
  const { header, planes } = orThrow(decodeDpx(readFileSync(out), out))
  expect(planes).toEqual(scanned(4).planes)
  expect(header).toMatchObject({ transfer: 1, rate: rate(24), timecode: '00:00:10:03' })
  expect(printed).toEqual([`Wrote ${out}: frame 3, 00:00:10:03, scanned`])
})

test.each([
  [['--at', '1'], /--out/u],
  [['--out', 'a.png'], /--at/u],
  [['--at', '1', '--out', 'a.jpg'], /does not end in/u],
  [['--at', '4', '--out', 'a.png'], /goes from 00:00:10:00 to 00:00:10:03/u],
  [['--at', '00:00:10:30', '--out', 'a.png'], /frames go from/u],
  [['--at', '1', '--out', 'a.png', '--reel', 'nine'], /no reel/u],
])('%j is wrong use, and writes nothing', async (args, says) => {
  const before = readdirSync(folder)
  const { done } = await still(...args)
  expect(done).toMatchObject({ ok: false, problems: [{ code: 'wrong-use' }] })
  expect(done.ok ? '' : done.problems[0].says).toMatch(says)
  expect(readdirSync(folder)).toEqual(before)
})

test('a scan that is not there, and a folder that is not, are told', async () => {
  const gone = await still('--at', '1', '--out', join(folder, 'b.png'), '--media', 'nowhere.mov')
  expect(gone.done.ok ? '' : gone.done.problems[0].says).toMatch(/is not there/u)
  const nowhere = await still('--at', '1', '--out', join(folder, 'no/b.png'))
  expect(nowhere.done.ok ? '' : nowhere.done.problems[0].says).toMatch(/folder is not there/u)
})
