import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { unzipSync } from 'fflate'
import { afterAll, beforeEach, expect, test } from 'vitest'
import type { PackContents } from '../../src/core/agreement/pack/packContents.ts'
import { readJob } from '../../src/core/formats/job/readJob.ts'
import { putTransferJob } from '../support/transferJob.ts'
import { reelwright } from './reelwright.ts'

const made: string[] = []
let here = ''
let job = ''
beforeEach(() => {
  here = mkdtempSync(join(tmpdir(), 'reelwright-pack-'))
  made.push(here)
  job = putTransferJob(here).path
})
afterAll(() => {
  for (const folder of made) rmSync(folder, { recursive: true, force: true })
})

const pack = (...args: readonly string[]) => reelwright(['pack', job, ...args])

const contentsOf = (html: string): PackContents =>
  JSON.parse(/id="contents">([^<]*)<\/script>/u.exec(html)?.[1] ?? '')

test('a pack of some cues is one page, and the job knows it', async () => {
  const out = join(here, 'pack.html')
  const { status, out: told } = await pack('--out', out, '--cues', '2,4', '--for', 'Ines')
  expect([status, told]).toEqual([0, expect.stringMatching(/2 cues, .* knows it as pack-/u)])
  const contents = contentsOf(readFileSync(out, 'utf8'))
  expect(contents.cues.map(({ number }) => number)).toEqual([2, 4])
  expect(contents.cues[0]?.after).toMatch(/^data:image\/jpeg;base64,/u)
  expect(contents.cues[0]?.clip).toBeNull()
  expect(contents).toMatchObject({ madeFor: 'Ines', key: { algorithm: 'Ed25519' } })
  const read = readJob(readFileSync(job, 'utf8'))
  expect(read.ok && Object.values(read.value.packs)).toMatchObject([
    { id: contents.id, cues: 2, madeFor: 'Ines', key: { algorithm: 'Ed25519' } },
  ])
  expect(readFileSync(job, 'utf8')).not.toContain(contents.key?.privateKey)
})

test('with clips each cue moves; a .zip has full-size stills', async () => {
  const out = join(here, 'pack.zip')
  const { status } = await pack('--out', out, '--cues', '1-2', '--clips', '0.5', '--unsigned')
  expect(status).toBe(0)
  const files = unzipSync(readFileSync(out))
  const names = Object.keys(files)
  expect(names.filter((name) => name.startsWith('stills/'))).toEqual([
    'stills/cue-0001-before.jpg',
    'stills/cue-0001-after.jpg',
    'stills/cue-0002-before.jpg',
    'stills/cue-0002-after.jpg',
  ])
  const page = names.find((name) => name.endsWith('.html')) ?? ''
  const contents = contentsOf(new TextDecoder().decode(files[page]))
  expect(contents.key).toBeNull()
  for (const { clip } of contents.cues) expect(clip).toMatch(/^data:video\/mp4;base64,/u)
})

test('its size is told before, and nothing is written then', async () => {
  const before = readFileSync(job, 'utf8')
  const { status, out } = await pack('--out', join(here, 'p.html'), '--dry-run', '--json')
  const told = JSON.parse(out)
  expect([status, told.written, told.cues]).toEqual([0, false, 4])
  expect(told.bytes).toBeGreaterThan(10_000)
  expect(readFileSync(job, 'utf8')).toBe(before)
})

test.each([
  [['--out', 'pack.txt'], 2, '--out FILE.html or FILE.zip'],
  [['--out', 'p.html', '--cues', '5'], 2, 'numbers from 1 to 4'],
  [['--out', 'p.html', '--cues', '3-2'], 2, 'numbers from 1 to 4'],
  [['--out', 'p.html', '--open', '--scene', '1'], 2, 'one of --cues, --scene and --open'],
  [['--out', 'p.html', '--scene', 'none'], 3, 'No cue has the scene mark'],
  [['--out', 'p.html', '--clips', '99'], 2, '0 to 60 seconds'],
  [['--out', 'p.html', '--media', 'gone.mp4'], 3, 'gone.mp4 is not there'],
])('%j is refused, and the job stays as it is', async (args, status, says) => {
  const before = readFileSync(job, 'utf8')
  const refused = await pack(...args)
  expect([refused.status, refused.error]).toEqual([status, expect.stringContaining(says)])
  expect(readFileSync(job, 'utf8')).toBe(before)
})

test('never goes over the job or its scan', async () => {
  const page = join(here, 'job.html')
  writeFileSync(page, readFileSync(job))
  const refused = await reelwright(['pack', page, '--out', page])
  expect([refused.status, refused.error]).toEqual([2, expect.stringContaining('write to another')])
})
