import { mkdtemp, rm, unlink, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, describe, expect, it } from 'vitest'
import type { PassPlan } from '../../src/core/transfer/passPlan.ts'
import type { TransferFormat } from '../../src/core/transfer/transferSettings.ts'
import { openMediaNode } from '../../src/media/node/openMediaNode.ts'
import { builtKernel } from '../kernel/builtKernel.ts'
import {
  delivered,
  findingsOf,
  reelPlan,
  reelScan,
  sequenceFiles,
  standings,
} from '../support/writtenReel.ts'

const kernel = await builtKernel()
const folder = await mkdtemp(join(tmpdir(), 'written-'))
afterAll(() => rm(folder, { recursive: true }))

type Frames = readonly Uint8Array<ArrayBuffer>[]

/** A sequence in a folder of its own, its frames or files changed on the way. */
const writeSequence = async (
  plan: PassPlan,
  change: { frames?: (frames: Frames) => Frames } = {},
) => {
  const { frames } = await delivered(plan, kernel)
  const files = await sequenceFiles(plan, change.frames?.(frames) ?? frames)
  const path = await mkdtemp(join(folder, 'sequence-'))
  for (const [name, bytes] of files) await writeFile(join(path, name), bytes)
  return { path, files: [...files] }
}

const opened = async (path: string) => {
  const source = await openMediaNode(path)
  if (!source.ok) throw new Error(source.problems[0].says)
  return source.value
}

const found = async (plan: PassPlan, path: string) =>
  findingsOf({ plan, kernel, written: await opened(path) })

const swapped =
  (a: number, b: number) =>
  (frames: Frames): Frames =>
    frames.map((each, i) => (i === a ? frames[b] : i === b ? frames[a] : each) ?? each)

describe.each<TransferFormat>(['dpx', 'tiff', 'png'])('a sequence of %s', (format) => {
  it('is right as it was written, with its head, burnt-in timecode and limits', async () => {
    const plan = reelPlan({
      format,
      head: { bars: 1, slate: 0, leader: 0 },
      burnsTimecode: true,
      limiting: 'soft',
    })
    const findings = await found(plan, (await writeSequence(plan)).path)
    expect(standings(findings)).toMatchObject({
      frames: 'right',
      cues: 'right',
      tolerance: 'right',
      limiting: 'told',
      tags: 'right',
      duration: format === 'dpx' ? 'right' : 'told',
      sound: 'told',
      checksum: 'told',
    })
    expect(findings.frames?.says).toBe('49 frames, as planned.')
    expect(findings.cues?.says).toContain('7 frames compared')
  })

  it('with two frames swapped at a cue says which are shown instead', async () => {
    const plan = reelPlan({ format })
    const findings = await found(plan, (await writeSequence(plan, { frames: swapped(7, 8) })).path)
    expect(findings.cues?.standing).toBe('wrong')
    expect(findings.cues?.says).toContain('cue 1 at frame 7, 10:00:00:07, which shows frame 8')
    expect(findings.cues?.says).toContain('cue 2 at frame 8, 10:00:00:08, which shows frame 7')
    expect(findings.frames?.standing).toBe('right')
  })
})

it('a cue that comes a frame late or a frame early is found by its values', async () => {
  const plan = reelPlan()
  const move = (to: number): PassPlan => ({
    ...plan,
    cues: plan.cues.map((cue, i) => (i === 1 ? { ...cue, first: to as typeof cue.first } : cue)),
  })
  const late = await found(plan, (await writeSequence(move(9))).path)
  expect(late.cues?.says).toContain('cue 2 at frame 8, 10:00:00:08, which has the values of cue 1')
  const early = await found(plan, (await writeSequence(move(7))).path)
  expect(early.cues?.says).toContain('cue 1 at frame 7, 10:00:00:07, which has the values of cue 2')
})

it('a code of one pixel on a cue’s first frame is found', async () => {
  const plan = reelPlan()
  const { path } = await writeSequence(plan, {
    frames: (frames) =>
      frames.map((bytes, i) => {
        if (i !== 16) return bytes
        const changed = bytes.slice()
        changed[4 * 1000 + 2] = (changed[4 * 1000 + 2] ?? 0) ^ 0x10
        return changed
      }),
  })
  const { cues } = await found(plan, path)
  expect(cues?.standing).toBe('wrong')
  expect(cues?.says).toMatch(
    /^Not as decided, of \d frames compared: cue 3 at frame 16, .* codes\.$/u,
  )
})

it('a picture cut short is named, and the others are looked at all the same', async () => {
  const plan = reelPlan({ format: 'tiff' })
  const { path, files } = await writeSequence(plan)
  const [name, bytes] = files[5] ?? []
  if (!name || !bytes) throw new Error('no such file')
  await writeFile(join(path, name), bytes.subarray(0, bytes.length - 2000))
  const findings = await found(plan, path)
  expect(findings.frames).toMatchObject({ standing: 'wrong' })
  expect(findings.frames?.says).toContain('frame 5 (')
  expect(findings.frames?.says).toContain(name)
  expect(findings.cues?.standing).toBe('right')
  expect(findings.tolerance?.standing).toBe('not known')
  expect(findings.flashes).toMatchObject({ standing: 'not known' })
  expect(findings.flashes?.says).toContain('Only the first 5 of the reel’s 24 frames')
})

it('a cue’s frame that cannot be decoded leaves its values not known', async () => {
  const plan = reelPlan()
  const { path, files } = await writeSequence(plan)
  const name = files[8]?.[0] ?? ''
  await writeFile(join(path, name), new Uint8Array(5000))
  const findings = await found(plan, path)
  expect(findings.frames?.standing).toBe('wrong')
  expect(findings.cues).toMatchObject({ standing: 'not known' })
  expect(findings.cues?.says).toContain('Only 6 of the 7 frames')
})

it('a missing picture inside is refused by name, one at the end is counted', async () => {
  const plan = reelPlan()
  const { path, files } = await writeSequence(plan)
  await unlink(join(path, files[23]?.[0] ?? ''))
  const findings = await found(plan, path)
  expect(standings(findings)).toMatchObject({ frames: 'wrong', duration: 'wrong' })
  expect(findings.frames?.says).toContain('23 frames, not the 24')
  await unlink(join(path, files[10]?.[0] ?? ''))
  expect(await openMediaNode(path)).toMatchObject({ ok: false })
})

it('a frame doubled at the end of a cue, and one too many, are found', async () => {
  const plan = reelPlan()
  const doubled = (frames: Frames): Frames => [...frames.slice(0, 8), ...frames.slice(7)]
  const findings = await found(plan, (await writeSequence(plan, { frames: doubled })).path)
  expect(findings.frames?.says).toContain('25 frames, not the 24')
  expect(findings.cues?.says).toContain('cue 2 at frame 8, 10:00:00:08, which shows frame 7')
})

it('bytes that are not those written are found by their checksum', async () => {
  const plan = reelPlan()
  const written = await opened((await writeSequence(plan)).path)
  const taken = (sha256: string) => () => Promise.resolve(sha256)
  const right = await findingsOf({ plan, kernel, written, checksumAgain: taken('a'.repeat(64)) })
  expect(right.checksum?.standing).toBe('right')
  const wrong = await findingsOf({ plan, kernel, written, checksumAgain: taken('b'.repeat(64)) })
  expect(wrong.checksum?.standing).toBe('wrong')
})

it('what is outside the tolerance is wrong, by cue and worst frame', async () => {
  const plan = reelPlan()
  // Full-range codes end at peak: only a profile that asks for less can find them outside.
  const hot: PassPlan = {
    ...plan,
    profile: { ...plan.profile, name: 'the house limits', rgb: [0, 0.95], luma: [0, 0.95] },
    cues: plan.cues.map((cue, i) =>
      i === 1 ? { ...cue, grade: { ...cue.grade, gain: [1.9, 1.9, 1.9] } } : cue,
    ),
  }
  const { tolerance, cues, frames } = await found(hot, (await writeSequence(hot)).path)
  expect([frames, cues].map((each) => each?.standing)).toEqual(['right', 'right'])
  expect(tolerance?.standing).toBe('wrong')
  expect(tolerance?.says).toMatch(
    /of 24 frames of the file are outside the house limits, in cues 2, 3: at worst .* of frame \d+, 10:00:00:\d\d; R′/u,
  )
})

it('a wrong rate or size stated by the file is told', async () => {
  const plan = reelPlan()
  const written = await opened((await writeSequence(plan)).path)
  const stating = (facts: object) =>
    findingsOf({ plan, kernel, written: { ...written, facts: { ...written.facts, ...facts } } })
  const { duration } = await stating({ rate: { num: 24, den: 1 } })
  expect(duration).toMatchObject({ standing: 'wrong' })
  expect(duration?.says).toContain('states 24')
  expect((await stating({ displayAspect: 4 / 3 })).tags?.says).toContain('aspect 1.333')
  expect((await stating({ depth: 12 })).tags?.says).toContain('12 bits instead of 10')
})

it('a frame of the scan that was held is expected as it was held', async () => {
  const plan = reelPlan({ onDamage: 'hold' })
  const scan = reelScan(plan, new Set([8]))
  const { frames, held } = await delivered(plan, kernel, scan)
  expect(held).toEqual([8])
  const path = await mkdtemp(join(folder, 'held-'))
  for (const [name, bytes] of await sequenceFiles(plan, frames))
    await writeFile(join(path, name), bytes)
  const written = await opened(path)
  const right = await findingsOf({ plan, kernel, written, scan, heldFrames: held })
  expect(right.cues?.standing).toBe('right')
  const gone = await findingsOf({
    plan: reelPlan({ onDamage: 'stop' }),
    kernel,
    written,
    scan,
  })
  expect(gone.cues).toMatchObject({ standing: 'not known' })
  expect(gone.cues?.says).toContain('Frame 8 of orlop-1.mov cannot be decoded')
})

it('stops where it is told to', async () => {
  const plan = reelPlan()
  const written = await opened((await writeSequence(plan)).path)
  const stopped = AbortSignal.abort(new Error('enough'))
  const { checkWritten } = await import('../../src/work/checkWritten.ts')
  await expect(
    checkWritten({ plan, kernel, written, scan: reelScan(plan) } as never, () => {}, stopped),
  ).rejects.toThrow('enough')
})
