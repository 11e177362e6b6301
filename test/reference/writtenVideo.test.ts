import { execFileSync, spawnSync } from 'node:child_process'
import { mkdtemp, open, readFile, rm, stat, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, describe, expect, it } from 'vitest'
import type { PassPlan } from '../../src/core/transfer/passPlan.ts'
import {
  TRANSFER_FORMAT_FACTS,
  type TransferFormat,
} from '../../src/core/transfer/transferSettings.ts'
import { videoTags } from '../../src/core/transfer/videoTags.ts'
import { encodersOf } from '../../src/media/node/encoderArguments.ts'
import { joinVideo } from '../../src/media/node/joinVideo.ts'
import { openMediaNode } from '../../src/media/node/openMediaNode.ts'
import { beginVideoSegment, findEncoder } from '../../src/media/node/videoSegment.ts'
import { builtKernel } from '../kernel/builtKernel.ts'
import { delivered, findingsOf, reelPlan, standings } from '../support/writtenReel.ts'

const kernel = await builtKernel()
const folder = await mkdtemp(join(tmpdir(), 'written-video-'))
afterAll(() => rm(folder, { recursive: true }))

const encoders = spawnSync('ffmpeg', ['-hide_banner', '-v', 'error', '-encoders'], {
  encoding: 'utf8',
}).stdout
const formats = (['h264', 'vp9', 'av1'] as const).filter((format) => {
  const isThere = encodersOf(format).some((encoder) => encoders?.includes(` ${encoder} `))
  if (!isThere) console.log(`Not checked: ffmpeg or its encoder of ${format} is missing.`)
  return isThere
})

type Frames = readonly Uint8Array<ArrayBuffer>[]

const encode = async (plan: PassPlan, change: (frames: Frames) => Frames = (same) => same) => {
  const frames = change((await delivered(plan, kernel)).frames)
  const own = await mkdtemp(join(folder, 'video-'))
  const piece = join(own, 'piece.nut')
  const segment = beginVideoSegment(plan, (await findEncoder(plan)).name, piece)
  for (const bytes of frames) await segment.write(bytes)
  await segment.finish()
  const { extension } = TRANSFER_FORMAT_FACTS[plan.settings.format]
  const path = join(own, `orlop.${extension}`)
  const wish = {
    pieces: [{ path: piece, frames: frames.length }],
    rate: plan.reel.rate,
    sound: undefined,
    container: extension === 'mp4' ? 'mp4' : 'webm',
    timecode: '10:00:00:00',
    tags: videoTags(plan),
  } as const
  const joined = await joinVideo(wish, own, path)
  if (!joined.ok) throw new Error(joined.problems[0].says)
  return path
}

const found = async (plan: PassPlan, path: string) => {
  const written = await openMediaNode(path)
  if (!written.ok) throw new Error(written.problems[0].says)
  return findingsOf({ plan, kernel, written: written.value })
}

const swapped =
  (a: number, b: number) =>
  (frames: Frames): Frames =>
    frames.map((each, i) => (i === a ? frames[b] : i === b ? frames[a] : each) ?? each)

describe.each<TransferFormat>(formats)('%s by ffmpeg', (format) => {
  it('is right as it was written, and its tags are those ffprobe reads', async () => {
    const plan = reelPlan({ format, burnsTimecode: true })
    const path = await encode(plan)
    const findings = await found(plan, path)
    console.log(
      `${format}: ${findings.cues?.says} ${findings.tolerance?.says} ${findings.tags?.says}`,
    )
    expect(standings(findings)).toMatchObject({
      frames: 'right',
      cues: 'right',
      tolerance: 'right',
      tags: 'right',
      duration: 'right',
    })
    const probed = execFileSync(
      'ffprobe',
      [
        ...['-v', 'error', '-select_streams', 'v', '-of', 'default=nw=1', '-show_entries'],
        'stream=color_range,color_space,color_transfer,color_primaries,r_frame_rate',
        path,
      ],
      { encoding: 'utf8' },
    )
    for (const told of [
      'color_range=tv',
      'color_space=bt709',
      'color_transfer=bt709',
      'color_primaries=bt709',
      'r_frame_rate=25/1',
    ])
      expect(probed).toContain(told)
  })

  it('with frames swapped in a shot, or at a change of shot, says so', async () => {
    const plan = reelPlan({ format })
    const inShot = await found(plan, await encode(plan, swapped(15, 16)))
    expect(inShot.cues?.says).toMatch(/cue 3 at frame 16, 10:00:00:16, which/u)
    const atCut = await found(plan, await encode(plan, swapped(7, 8)))
    expect(atCut.cues?.says).toContain('cue 2 at frame 8, 10:00:00:08, which shows frame 7')
  })

  it('with a cue a frame late or early says whose values are there', async () => {
    const plan = reelPlan({ format })
    const noRamp = { ...plan, cues: plan.cues.map((cue) => ({ ...cue, ramp: 0 })) }
    const moved = (by: number): PassPlan => ({
      ...noRamp,
      cues: noRamp.cues.map((cue, i) =>
        i === 2 ? { ...cue, first: (cue.first + by) as typeof cue.first } : cue,
      ),
    })
    const late = await found(noRamp, await encode(moved(1)))
    expect(late.cues?.says).toContain(
      'cue 3 at frame 16, 10:00:00:16, which has the values of cue 2',
    )
    const early = await found(noRamp, await encode(moved(-1)))
    expect(early.cues?.says).toContain(
      'cue 2 at frame 15, 10:00:00:15, which has the values of cue 3',
    )
  })

  it('with a frame doubled, and the last left out, says what is shown', async () => {
    const plan = reelPlan({ format })
    const path = await encode(plan, (frames) => [...frames.slice(0, 8), ...frames.slice(7, -1)])
    expect((await found(plan, path)).cues?.says).toContain('cue 2 at frame 8')
  })

  it('cut short is refused or found short', async () => {
    const plan = reelPlan({ format })
    const path = await encode(plan)
    const { size } = await stat(path)
    const file = await open(path, 'r+')
    await file.truncate(Math.floor(size * 0.6))
    await file.close()
    const written = await openMediaNode(path)
    if (!written.ok) expect(written.problems[0].says).toContain('orlop')
    else
      expect((await findingsOf({ plan, kernel, written: written.value })).frames?.standing).toBe(
        'wrong',
      )
  })

  it('with bytes changed in its pictures is not found right', async () => {
    const plan = reelPlan({ format })
    const path = await encode(plan)
    const bytes = await readFile(path)
    for (let i = 0; i < 400; i++) bytes[Math.floor(bytes.length / 2) + i] = (i * 37) & 255
    await writeFile(path, bytes)
    const written = await openMediaNode(path)
    if (!written.ok) return expect(written.problems[0].says).toContain('orlop')
    const findings = standings(await findingsOf({ plan, kernel, written: written.value }))
    expect([findings.frames, findings.cues, findings.tolerance]).not.toEqual([
      'right',
      'right',
      'right',
    ])
  })

  it('with the tag of another luma equation is wrong', async () => {
    const plan = reelPlan({ format })
    const other: PassPlan = {
      ...plan,
      reel: { ...plan.reel, media: { ...plan.reel.media, matrix: 'bt2020' } },
      coding: { ...plan.coding, matrix: 'bt2020' },
    }
    const { tags } = await found(other, await encode(plan))
    expect(tags?.standing).toBe('wrong')
    expect(tags?.says).toContain('matrix bt709 instead of bt2020')
  })
})
