import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { afterAll, describe, expect, test } from 'vitest'
import { frame } from '../../src/core/time/frame.ts'
import { MediaError } from '../../src/media/mediaError.ts'
import { framePlaces } from '../../src/media/node/framePlaces.ts'
import { openMediaNode } from '../../src/media/node/openMediaNode.ts'
import { orThrow } from './support/orThrow.ts'

const NUMBERED = resolve(import.meta.dirname, '../media/numbered')
const VIDEO = resolve(import.meta.dirname, '../media/video')
const LONG = join(VIDEO, 'bbb-opening-480p24.mp4')
const temporary = mkdtempSync(join(tmpdir(), 'seek-'))
afterAll(() => rmSync(temporary, { recursive: true }))

const isVideo = (name: string): boolean => /\.(mp4|mov|mkv|webm|mpegts|mxf|mpg|avi)$/u.test(name)
/** Every kind of stream, and one long enough to have many groups of pictures. */
const CLIPS = [
  ...readdirSync(NUMBERED)
    .filter(isVideo)
    .map((name) => [name, join(NUMBERED, name)] as const),
  ['street-dip-to-white-360p.mp4', join(VIDEO, 'street-dip-to-white-360p.mp4')] as const,
]

/** A sum of a picture's luma that hardly two frames of a clip share. */
const markOf = (samples: ArrayLike<number>): number => {
  let mark = 0
  for (let i = 0; i < samples.length; i += 7) mark = (mark * 31 + (samples[i] ?? 0)) % 1_000_000_007
  return mark
}

describe('beginning anywhere gives the frames that reading from the first gives', () => {
  test.each(CLIPS)('%s', async (_, path) => {
    const whole = orThrow(await openMediaNode(path))
    const marks: number[] = []
    for await (const { planes } of whole.readRange(frame(0), frame(whole.facts.frames)))
      marks.push(markOf(planes.samples[0]))
    whole.close()
    for (const part of [0.72]) {
      const from = Math.floor(part * marks.length)
      const source = orThrow(await openMediaNode(path))
      const end = Math.min(from + 4, marks.length)
      for await (const { frame: at, planes } of source.readRange(frame(from), frame(end)))
        expect([at, markOf(planes.samples[0])]).toEqual([at, marks[at]])
      source.close()
    }
  })
})

describe('a frame that is damaged', () => {
  const damaged = (): string => {
    const bytes = new Uint8Array(readFileSync(LONG))
    const path = join(temporary, 'damaged.mp4')
    const middle = bytes.length >> 1
    for (let i = 0; i < 60; i++) bytes[middle + 7 * i] = (bytes[middle + 7 * i] ?? 0) ^ 0x5a
    writeFileSync(path, bytes)
    return path
  }

  test('is named and never shown, and reading goes on after it', async () => {
    const source = orThrow(await openMediaNode(damaged()))
    const read: number[] = []
    const failure: unknown = await (async () => {
      for await (const { frame: at } of source.readRange(frame(300), frame(400))) read.push(at)
    })().catch((error: unknown) => error)
    expect(failure).toBeInstanceOf(MediaError)
    const broken = (read.at(-1) ?? 0) + 1
    expect((failure as MediaError).problem).toMatchObject({
      code: 'cannot-decode',
      says: expect.stringContaining(`Frame ${broken} of damaged.mp4 cannot be decoded`),
      at: { frame: broken },
    })
    for await (const { frame: at } of source.readRange(frame(broken + 1), frame(400))) read.push(at)
    expect(read).toEqual([300, ...read.slice(1)])
    expect(read).not.toContain(broken)
    expect(read.length).toBe(99)
    await expect(source.read(frame(broken))).rejects.toBeInstanceOf(MediaError)
    expect((await source.read(frame(broken + 1))).width).toBe(854)
    source.close()
  })
})

describe('the places of frames', () => {
  const packet = (pts: number, isKey = false) => ({
    pts,
    pts_time: String(pts / 25),
    flags: isKey ? 'K_' : '__',
  })

  test('are ranks of their times, and lead to the key frame before', () => {
    const places = framePlaces([packet(10, true), packet(12), packet(11), packet(13, true)], 4)
    expect(places?.rankOf(11)).toBe(1)
    expect(places?.rankOf(14)).toBeUndefined()
    expect(places?.keyBefore(2)).toEqual({ rank: 0, seconds: 0.4 })
    expect(places?.keyBefore(3)).toEqual({ rank: 3, seconds: 0.52 })
    expect(places?.keyAfter(0)).toBe(3)
    expect(places?.keyAfter(3)).toBe(4)
  })

  test('begin at the first frame alone where groups of pictures are open', () => {
    const open = [packet(0, true), packet(1), packet(4, true), packet(3), packet(5, true)]
    expect(framePlaces(open, 5)?.keyBefore(4).rank).toBe(0)
  })

  test('are not known where times are missing or shared, or packets are not pictures', () => {
    expect(framePlaces([packet(0, true), { flags: '__' }], 2)).toBeUndefined()
    expect(framePlaces([packet(0, true), packet(0)], 2)).toBeUndefined()
    expect(framePlaces([packet(0, true), packet(1)], 3)).toBeUndefined()
  })
})
