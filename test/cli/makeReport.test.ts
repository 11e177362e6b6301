import { createHash } from 'node:crypto'
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { encode } from 'fast-png'
import { afterAll, beforeAll, expect, it, vi } from 'vitest'
import { makeReportNode } from '../../src/cli/makeReport.ts'
import { ok } from '../../src/core/base/result.ts'
import type { ReelId } from '../../src/core/job/recordIds.ts'
import { scanPaths } from '../../src/media/node/scanPaths.ts'
import { builtKernel } from '../kernel/builtKernel.ts'
import { REEL_ID, sampleJob, sampleReel } from '../support/sampleJob.ts'

// The command line has its kernel beside its built self; here it is where the build makes it.
vi.mock('../../src/cli/kernelHere.ts', () => ({
  kernelHere: async () => ok(await builtKernel()),
}))

let folder = ''

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'reelwright-report-'))
  for (let i = 0; i < 12; i++) {
    // From frame 6 on the pictures are past peak white, which no tolerance lets pass.
    const data = new Uint16Array(64 * 48 * 3).fill(i < 6 ? 30_000 : 65_000)
    writeFileSync(
      join(folder, `scan-${String(i).padStart(3, '0')}.png`),
      encode({ width: 64, height: 48, channels: 3, depth: 16, data }),
    )
  }
})

afterAll(() => rmSync(folder, { recursive: true }))

const job = () => {
  const { media } = sampleReel()
  const picture = { width: 64, height: 48, displayAspect: 4 / 3, depth: 16 } as const
  const reel = sampleReel({
    frames: 12,
    media: { ...media, ...picture, layout: 'rgb', range: 'full' },
  })
  return sampleJob(
    [0, 6],
    (cue, index) => ({
      ...cue,
      grade: index === 1 ? { ...cue.grade, gain: [1.2, 1.2, 1.2] } : cue.grade,
    }),
    reel,
  )
}

const reported = async (media: string | undefined, wantsVerdicts: boolean) => {
  const paces: number[] = []
  const made = await makeReportNode(job(), REEL_ID, media, wantsVerdicts, ({ done, total }) =>
    paces.push(done / total),
  )
  if (!made.ok) throw new Error(made.problems[0].says)
  return { ...made.value, paces }
}

it('is made from a sequence, with pictures, verdicts and the checksum of its list', async () => {
  const { name, text, paces } = await reported(folder, true)
  expect(name).toBe('Orlop-reel-1-report.html')
  expect(text.match(/<img /gu)).toHaveLength(4)
  expect(text.match(/<dd>● inside/gu)).toHaveLength(1)
  expect(text.match(/<dd>▲ over/gu)).toHaveLength(1)
  const hash = (bytes: Uint8Array | string) => createHash('sha256').update(bytes).digest('hex')
  const list = readdirSync(folder)
    .toSorted()
    .map((each) => `${hash(readFileSync(join(folder, each)))}  ${each}\n`)
  expect(text).toContain(hash(list.join('')))
  expect(text).toContain('of its 12 files')
  for (const name of ['scan-003.png', 'scan-####.png'])
    expect(await scanPaths(join(folder, name)), name).toHaveLength(12)
  expect(await scanPaths(join(folder, 'scan.mov'))).toEqual([join(folder, 'scan.mov')])
  expect(paces.at(-1)).toBe(1)
  expect(paces).toEqual(paces.toSorted((a, b) => a - b))
})

it('has no verdicts where they are not wanted, and no pictures without a scan', async () => {
  expect((await reported(folder, false)).text.match(/<dd>◌ not measured/gu)).toHaveLength(2)
  const { text } = await reported(undefined, true)
  expect(text).not.toContain('<img')
  expect(text).toContain('not worked out for this report')
})

it('is refused for a scan or a reel that is not there', async () => {
  const gone = await makeReportNode(job(), REEL_ID, join(folder, 'gone.mov'), false, () => {})
  expect(gone).toMatchObject({ ok: false, problems: [{ code: 'cannot-read' }] })
  const none = await makeReportNode(job(), 'none' as ReelId, undefined, false, () => {})
  expect(none).toMatchObject({ ok: false, problems: [{ code: 'not-found' }] })
})
