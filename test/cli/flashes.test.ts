import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { encode } from 'fast-png'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { IDENTITY_GRADE } from '../../src/core/colour/grade.ts'
import { FLASH_CAUTION } from '../../src/core/flashes/caution.ts'
import { writeJob } from '../../src/core/formats/job/writeJob.ts'
import { sampleJob, sampleReel } from '../support/sampleJob.ts'
import { reelwright } from './reelwright.ts'

const FRAMES = 40
let folder = ''

/** A job of four cues over the pictures of `folder`: cuts fall among the flashes. */
const jobFile = (name: string, gain: number): string => {
  const { media } = sampleReel()
  const reel = sampleReel({
    frames: FRAMES,
    media: { ...media, width: 32, height: 18, depth: 8, layout: 'rgb', range: 'full' },
  })
  const grade = { ...IDENTITY_GRADE, gain: [gain, gain, gain] as const }
  const path = join(folder, name)
  writeFileSync(path, writeJob(sampleJob([0, 12, 16, 30], (cue) => ({ ...cue, grade }), reel)))
  return path
}

/** Flashes of eight frames' changes, 10 to 24: in no cue by itself more than six within it. */
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'reelwright-flashes-'))
  for (let n = 0; n < FRAMES; n++) {
    const isLit = n >= 10 && n < 25 && (n - 10) % 4 < 2
    const data = new Uint8Array(32 * 18 * 3).fill(isLit ? 150 : 30)
    const png = encode({ width: 32, height: 18, data, depth: 8, channels: 3 })
    writeFileSync(join(folder, `scan_${String(n).padStart(4, '0')}.png`), png)
  }
})

afterAll(() => rmSync(folder, { recursive: true, force: true }))

it('flashes that go on across cuts fail, and each cue they reach into says so', async () => {
  const path = jobFile('job.json', 1)
  const { status, out } = await reelwright(['flashes', path, '--media', folder, '--json'])
  expect(status).toBe(1)
  const answer = JSON.parse(out)
  expect(answer.caution).toBe(FLASH_CAUTION)
  expect(answer.within).toBe(false)
  expect(answer.cues.map(({ within }: { within: boolean }) => within)).toEqual([
    false,
    false,
    false,
    true,
  ])
  expect(answer.cues[2].breaches).toMatchObject([
    {
      kind: 'general',
      first: 10,
      last: 24,
      changes: 8,
      area: 1,
      firstTimecode: '10:00:00:10',
      lastTimecode: '10:00:00:24',
    },
  ])
})

it('it is the graded picture that is watched', async () => {
  const dim = await reelwright(['flashes', jobFile('dim.json', 0.5), '--media', folder])
  expect(dim.status).toBe(0)
  expect(dim.out).toContain('cue 4  frame 30  nothing found')
  expect(dim.out).toContain(FLASH_CAUTION)
})

it('a scan is watched as it is, and says so in words', async () => {
  const { status, out } = await reelwright(['flashes', folder])
  expect(status).toBe(1)
  expect(out).toContain('FLASHES  frames 10…24')
  expect(out).toContain(FLASH_CAUTION)
})

it('what does not fit is wrong use', async () => {
  expect((await reelwright(['flashes'])).status).toBe(2)
  expect((await reelwright(['flashes', folder, '--reel', 'a'])).status).toBe(2)
  const named = await reelwright(['flashes', jobFile('named.json', 1), '--reel', 'none'])
  expect(named).toMatchObject({ status: 2 })
})
