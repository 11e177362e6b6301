import { describe, expect, it } from 'vitest'
import { rate } from '../../../src/core/time/rate.ts'
import { joinOrder } from '../../../src/core/transfer/joinOrder.ts'
import { filesOfFrames, partFrames } from '../../../src/core/transfer/partFrames.ts'
import {
  type PartManifest,
  readPartManifest,
  writePartManifest,
} from '../../../src/core/transfer/partManifest.ts'
import type { TransferFormat } from '../../../src/core/transfer/transferSettings.ts'
import { chanceFrom } from '../../support/fuzzReader.ts'

const SUM = 'a'.repeat(64)

/** Part `part` of `of` of a made-up pass. */
const manifestOf = (
  part: number,
  of: number,
  settings: TransferFormat = 'dpx',
  frames = 10,
): PartManifest => {
  const length = { settings, frames, rate: rate(24000, 1001) }
  const range = partFrames(length, part, of)
  return {
    ...{ format: 'reelwright-part', version: 1, identity: SUM, settings, program: '0.1.0' },
    ...{ encoder: '', tags: null, stem: 'Orlop', part, of, ...range, frames, headFrames: 0 },
    ...{ rate: length.rate, timecode: '01:00:00:00', sound: null, noSound: 'None.', held: [] },
    ...{ limitedPixels: 0, limitedFrames: 0, clippedPixels: 0 },
    files: filesOfFrames(length, 'Orlop', range).map(({ name }) => ({
      name,
      bytes: 1,
      sha256: SUM,
    })),
  }
}

describe('the frames of parts', () => {
  it('are all frames once, in order, however many parts there are', () => {
    const chance = chanceFrom(3)
    for (let i = 0; i < 400; i++) {
      const frames = chance(3000)
      const of = 1 + chance(40)
      const settings = chance(2) === 0 ? 'png' : 'vp9'
      const length = { settings, frames, rate: rate(24) } as const
      const parts = Array.from({ length: of }, (_, n) => partFrames(length, n + 1, of))
      const files = parts.flatMap((range) => filesOfFrames(length, 'a', range))
      for (const ranges of [parts, files]) {
        const broken = ranges.findIndex(({ first }, n) => first !== (ranges[n - 1]?.end ?? 0))
        expect([broken, ranges.at(-1)?.end ?? 0]).toEqual([-1, frames])
      }
    }
  })

  it('of video begin on the same frames however it is cut: every 96th at 24 a second', () => {
    const length = { settings: 'h264', frames: 1000, rate: rate(24000, 1001) } as const
    const names = (of: number) =>
      Array.from({ length: of }, (_, i) =>
        filesOfFrames(length, 'a', partFrames(length, i + 1, of)).map(({ name }) => name),
      ).flat()
    expect(names(1).slice(0, 3)).toEqual(['a_0000000.nut', 'a_0000096.nut', 'a_0000192.nut'])
    for (const of of [2, 3, 8, 50]) expect(names(of)).toEqual(names(1))
  })
})

describe('a manifest', () => {
  it('is read as it was written', () => {
    for (const settings of ['dpx', 'h264'] as const) {
      const manifest = manifestOf(2, 3, settings, 700)
      expect(readPartManifest(writePartManifest(manifest))).toEqual({ ok: true, value: manifest })
    }
  })

  const good = manifestOf(2, 3)
  const [file] = good.files
  it.each<[string, object]>([
    ['a file elsewhere', { files: good.files.map((each) => ({ ...each, name: '../a.dpx' })) }],
    ['an absolute path', { files: good.files.map((each) => ({ ...each, name: '/etc/passwd' })) }],
    [
      'a file of its own choice',
      { files: good.files.map((each) => ({ ...each, name: 'part.json' })) },
    ],
    ['one file under two frames', { files: good.files.map(() => file) }],
    ['a file too few', { files: good.files.slice(1) }],
    ['frames that are not those of its number', { first: 2 }],
    ['a part past the last', { part: 4 }],
    ['no parts at all', { part: 0, of: 0 }],
    ['a checksum that is none', { identity: 'A'.repeat(64) }],
    ['a name that is a path', { stem: '../Orlop' }],
    ['an option in its tags', { tags: { matrix: '-y', primaries: 'bt709', transfer: 'bt709' } }],
    ['a field nobody knows', { more: 1 }],
    ['another version', { version: 2 }],
    [
      'more frames than there is memory for',
      { ...manifestOf(1, 1), frames: 2 ** 52, end: 2 ** 52 },
    ],
    ['frames past counting', { frames: 1e300 }],
  ])('with %s is refused', (_, change) => {
    expect(readPartManifest(JSON.stringify({ ...good, ...change })).ok).toBe(false)
  })
})

describe('joining', () => {
  const found = (manifest: PartManifest, place = `at-${manifest.part}`) => ({ place, manifest })
  const all = [1, 2, 3].map((part) => found(manifestOf(part, 3)))

  it('takes parts in their order, each once', () => {
    const [first, second, third] = all
    const order = joinOrder([third, first, third, second].flatMap((each) => each ?? []))
    expect(order.ok && order.value.map(({ place }) => place)).toEqual(['at-1', 'at-2', 'at-3'])
  })

  it('names what is missing', () => {
    const order = joinOrder(all.slice(1, 2))
    expect(order.ok ? '' : order.problems[0].says).toBe(
      'Parts 1, 3 of 3 are missing or damaged; make them again.',
    )
  })

  it.each<[string, Partial<PartManifest>]>([
    ['pass', { identity: 'b'.repeat(64) }],
    ['format', { settings: 'png' }],
    ['encoder', { encoder: 'libx264, ffmpeg 7' }],
    ['count of parts', { of: 4 }],
  ])('refuses a part of another %s by its place', (_, change) => {
    const order = joinOrder([...all, found({ ...manifestOf(2, 3), ...change }, 'odd-one')])
    expect(order.ok ? undefined : order.problems[0].at).toEqual({ file: 'odd-one' })
  })
})
