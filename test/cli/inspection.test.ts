import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeEach, expect, test } from 'vitest'
import { readJob } from '../../src/core/formats/job/readJob.ts'
import { writeJob } from '../../src/core/formats/job/writeJob.ts'
import { REEL_ID, sampleJob } from '../support/sampleJob.ts'
import { reelwright } from './reelwright.ts'

const made: string[] = []
let here = ''
let job = ''
beforeEach(() => {
  here = mkdtempSync(join(tmpdir(), 'reelwright-inspection-'))
  made.push(here)
  job = join(here, 'job.json')
  writeFileSync(job, writeJob(sampleJob()))
})
afterAll(() => {
  for (const folder of made) rmSync(folder, { recursive: true, force: true })
})

const sheet = (particulars: unknown): string => {
  const path = join(here, 'found.json')
  writeFileSync(path, JSON.stringify(particulars))
  return path
}

test('what was found goes into the job, is told, and prints', async () => {
  const found = { support: 'nitrate', shrinkage: 0.0125, sound: 'optical', leader: '<b>A</b>' }
  const page = join(here, 'inspection.html')
  const { status, out } = await reelwright([
    'inspection',
    job,
    ...['--take', sheet(found), '--out', page],
  ])
  expect([status, out]).toEqual([0, expect.stringMatching(/Nitrate.*between 1 and 2 %/isu)])
  const read = readJob(readFileSync(job, 'utf8'))
  expect(read.ok && read.value.reels[REEL_ID]?.particulars).toMatchObject({
    ...found,
    splices: null,
  })
  const html = readFileSync(page, 'utf8')
  expect(html).toContain('1.25 %')
  expect(html).toContain('26 frames ahead (verified')
  expect(html).toContain('&lt;b&gt;A&lt;/b&gt;')
  // 1000 frames of 16 mm are 25 ft, 40 s at 25 frames a second (facts/film.md §1 and §2).
  expect(html).toContain('25 ft 00 fr')
  expect(html).toMatch(/>25<\/th><td>(?:0:)?40/u)
})

test.each([
  [{ support: 'paper' }, 'support'],
  [{ shrinkage: 2 }, 'shrinkage'],
  [{ colour: 'red' }, 'colour'],
  [{ marks: [{ frame: 1000, kind: 'note', says: '' }] }, "past the reel's 1000 frames"],
])('%j is refused, and the job stays as it is', async (found, says) => {
  const before = readFileSync(job, 'utf8')
  const refused = await reelwright(['inspection', job, '--take', sheet(found)])
  expect([refused.status, refused.error]).toEqual([3, expect.stringContaining(says)])
  expect(readFileSync(job, 'utf8')).toBe(before)
})
