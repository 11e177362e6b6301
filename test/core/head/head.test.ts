import { describe, expect, test } from 'vitest'
import { barsPicture } from '../../../src/core/head/barsPicture.ts'
import { burnInOf } from '../../../src/core/head/burnIn.ts'
import { headPictureOf } from '../../../src/core/head/headPicture.ts'
import { slateLines } from '../../../src/core/head/slateLines.ts'
import { letterLine } from '../../../src/core/lettering/letters.ts'
import { decodePlanes } from '../../../src/core/picture/decodePlanes.ts'
import type { Planes } from '../../../src/core/picture/planes.ts'
import { frame } from '../../../src/core/time/frame.ts'
import { rate } from '../../../src/core/time/rate.ts'
import { layDelivered } from '../../../src/core/transfer/layDelivered.ts'
import { sampleJob, sampleReel } from '../../support/sampleJob.ts'
import { samplePlan } from '../../support/samplePlan.ts'

const AS_MADE = { matrix: 'bt709', range: 'full' } as const

/** 10-bit Y′, Cb, Cr of 100-0-75-0: computed by the code equations of BT.601-7 and BT.709-6. */
const CODES = {
  bt601: [
    [940, 512, 512],
    [646, 176, 567],
    [525, 625, 176],
    [450, 289, 231],
    [335, 735, 793],
    [260, 399, 848],
    [139, 848, 457],
    [64, 512, 512],
  ],
  bt709: [
    [940, 512, 512],
    [674, 176, 543],
    [581, 589, 176],
    [534, 253, 207],
    [251, 771, 817],
    [204, 435, 848],
    [111, 848, 481],
    [64, 512, 512],
  ],
} as const

describe('bars', () => {
  test.each(['bt601', 'bt709'] as const)('have the codes of 100-0-75-0 by %s', (matrix) => {
    const [width, height] = [720, 576]
    const picture = decodePlanes(barsPicture(width, height), AS_MADE)
    const form = { kind: 'planes', matrix, depth: 10, layout: '444' } as const
    const codes = new Uint16Array(layDelivered(picture, form).bytes.buffer)
    for (const [bar, wanted] of CODES[matrix].entries()) {
      const at = 100 * width + Math.round(((bar + 0.5) * width) / 8)
      for (const [plane, code] of wanted.entries())
        expect(Math.abs((codes[plane * width * height + at] ?? 0) - code)).toBeLessThanOrEqual(1)
    }
  })

  test('pass from one to the next over some pixels, without going past either', () => {
    const { samples } = barsPicture(720, 576)
    const red = Array.from(samples[0].subarray(170, 190))
    expect(red[0]).toBe(49_151)
    expect(red.at(-1)).toBe(0)
    expect(red.filter((code) => code > 0 && code < 49_151).length).toBeGreaterThanOrEqual(3)
    expect(red).toEqual(red.toSorted((a, b) => b - a))
  })
})

const brightest = ({ samples }: Planes): number =>
  Uint16Array.from(samples[0]).reduce((a, b) => Math.max(a, b), 0)

const partAbove = ({ samples: [grey] }: Planes, code: number): number =>
  Uint16Array.from(grey).filter((each) => each > code).length / grey.length

describe('the slate', () => {
  const plan = samplePlan({ head: { bars: 0, slate: 2, leader: 0 }, limiting: 'soft' })

  test('tells what is transferred and how', () => {
    const lines = new Map(slateLines(plan))
    expect(lines.get('Title')).toBe('Orlop')
    expect(lines.get('Reel')).toBe('Orlop reel 1, 16 mm')
    expect(lines.get('Tolerance')).toBe('EBU R 103 v3, limited softly to it')
    expect(lines.get('Scan')).toBe('orlop-1.mov')
    expect(lines.get('Cues')).toBe('4')
  })

  test('in a small picture tells that there is more', () => {
    const { media } = sampleReel()
    const small = sampleReel({ media: { ...media, width: 320, height: 180 } })
    const settings = { head: { bars: 0, slate: 1, leader: 0 } }
    const { samples } = headPictureOf(samplePlan(settings, sampleJob([0], undefined, small)))({
      kind: 'slate',
      index: 0,
    })
    const rows = Array.from({ length: 180 }, (_, y) =>
      samples[0].subarray(y * 320, (y + 1) * 320).some((code) => code > 0.4 * 65_535),
    )
    expect(rows.filter((isInk, y) => isInk && !rows[y - 1]).length).toBeGreaterThan(5)
  })

  test('keeps inside the graphics safe area, of every shape and size', () => {
    for (const [width, height, displayAspect] of [
      [1920, 1080, 16 / 9],
      [720, 576, 4 / 3],
      [320, 180, 16 / 9],
      [2048, 1556, 2048 / 1556],
    ] as const) {
      const { media } = sampleReel()
      const reel = sampleReel({
        media: { ...media, width, height, displayAspect },
        name: 'x'.repeat(400),
      })
      const job = sampleJob(undefined, undefined, reel)
      const made = headPictureOf(samplePlan({ head: { bars: 0, slate: 1, leader: 0 } }, job))
      const { samples } = made({ kind: 'slate', index: 0 })
      const ground = samples[0][0]
      const reach = { x: 0, y: 0 }
      for (let y = 0; y < height; y++)
        for (let x = 0; x < width; x++)
          if (samples[0][y * width + x] !== ground) {
            reach.x = Math.max(reach.x, Math.abs(x + 0.5 - width / 2))
            reach.y = Math.max(reach.y, Math.abs(y + 0.5 - height / 2))
          }
      const safe = Math.abs(displayAspect - 4 / 3) < 0.03 ? 0.4 : 0.45
      expect(reach.x).toBeLessThanOrEqual(safe * width + 1)
      expect(reach.y).toBeLessThanOrEqual(safe * height + 1)
      expect(brightest(made({ kind: 'slate', index: 0 }))).toBe(Math.round(0.75 * 65_535))
    }
  })
})

describe('the leader', () => {
  const made = headPictureOf(samplePlan({ head: { bars: 0, slate: 0, leader: 4 } }))
  const at = (index: number): Planes => made({ kind: 'leader', index })

  test('is black for its last second, and has one white mark two seconds before the reel', () => {
    const second = 25
    const marked = Array.from({ length: 4 * second }, (_, i) => i).filter(
      (index) => brightest(at(index)) === 65_535,
    )
    expect(marked).toEqual([2 * second])
    for (let index = 3 * second; index < 4 * second; index++) expect(brightest(at(index))).toBe(0)
    expect(brightest(at(3 * second - 1))).toBeGreaterThan(0)
  })

  test('never lights more than a twelfth of the picture', () => {
    for (let index = 0; index < 100; index += 3)
      expect(partAbove(at(index), 0.3 * 65_535)).toBeLessThan(1 / 12)
  })
})

describe('burnt-in timecode', () => {
  test('is the reel’s own, on each frame, above the edge, as high at every pixel shape', () => {
    const reel = sampleReel({ rate: rate(30_000, 1001), isDropFrame: true, startCount: 0 })
    const plan = samplePlan({ burnsTimecode: true }, sampleJob([0], undefined, reel))
    const burnt = burnInOf(plan)
    const overlay = burnt(frame(0))
    expect(overlay).toBeDefined()
    if (!overlay) return
    expect(overlay.top + overlay.height).toBe(Math.round(0.95 * 1080))
    expect(overlay.coverage.length).toBe(overlay.width * overlay.height)
    expect(burnt(frame(1))?.coverage).not.toEqual(overlay.coverage)
    expect([overlay.ink, overlay.ground]).toEqual([0.75, 0])
    const narrow = sampleReel({ media: { ...reel.media, displayAspect: 4 / 3 } })
    const squeezed = burnInOf(
      samplePlan({ burnsTimecode: true }, sampleJob([0], undefined, narrow)),
    )
    expect(squeezed(frame(0))?.width).toBeGreaterThan(overlay.width)
    expect(squeezed(frame(0))?.height).toBe(overlay.height)
  })

  test.each([
    [0, '00:00:00;00'],
    [1799, '00:00:59;29'],
    [1800, '00:01:00;02'],
    [17_982, '00:10:00;00'],
  ])('of frame %i is %s, letter by letter', (at, text) => {
    const drop = { rate: rate(30_000, 1001), isDropFrame: true, startCount: 0, frames: 20_000 }
    const plan = samplePlan({ burnsTimecode: true }, sampleJob([0], undefined, sampleReel(drop)))
    const overlay = burnInOf(plan)(frame(at))
    const letters = letterLine(text, 2, 2)
    if (!overlay) throw new Error('There is no overlay')
    const edge = {
      x: (overlay.width - letters.width) / 2,
      y: (overlay.height - letters.height) / 2,
    }
    const middle = Array.from({ length: letters.height }, (_, y) => {
      const from = (y + edge.y) * overlay.width + edge.x
      return [...overlay.coverage.subarray(from, from + letters.width)]
    }).flat()
    expect(middle).toEqual([...letters.coverage])
  })

  test('is not there where it is not asked for', () => {
    expect(burnInOf(samplePlan())(frame(3))).toBeUndefined()
  })
})
