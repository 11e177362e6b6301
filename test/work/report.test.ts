import { decode } from 'fast-png'
import { describe, expect, it } from 'vitest'
import { sha256OfText } from '../../src/core/base/sha256.ts'
import { displaySignal } from '../../src/core/colour/displaySignal.ts'
import { gradeColour, IDENTITY_GRADE } from '../../src/core/colour/grade.ts'
import { yCbCrToRgb } from '../../src/core/colour/yCbCr.ts'
import type { HeldId } from '../../src/core/job/recordIds.ts'
import { IDENTITY_FRAMING } from '../../src/core/picture/framing.ts'
import type { Planes } from '../../src/core/picture/planes.ts'
import { frame } from '../../src/core/time/frame.ts'
import { framePictures, type PicturesRequest } from '../../src/work/framePictures.ts'
import { reportedLists } from '../../src/work/reportedLists.ts'
import { gatherReport } from '../../src/work/reportFacts.ts'
import { scanChecksum } from '../../src/work/scanChecksum.ts'
import { builtKernel } from '../kernel/builtKernel.ts'
import { cueId, REEL_ID, sampleJob, sampleReel } from '../support/sampleJob.ts'
import { DOT, reportedJob, verdict } from '../support/sampleReport.ts'

/** One colour all over, as 8-bit narrow-range codes. */
const flat = ([y, cb, cr]: readonly [number, number, number]): Planes => {
  const plane = (code: number) => new Uint8Array(48 * 32).fill(code)
  return {
    ...{ width: 48, height: 32, layout: '444', depth: 8 },
    samples: [plane(y), plane(cb), plane(cr)],
  }
}

const REQUEST: PicturesRequest = {
  frame: frame(5),
  coding: { matrix: 'bt709', range: 'narrow' },
  grade: { lift: [0.05, 0, 0], gamma: [1, 1.2, 1], gain: [1, 1.1, 0.9], saturation: 0.8 },
  framing: IDENTITY_FRAMING,
  width: 12,
  height: 8,
}

const pixels = (address: string) => {
  const [, data = ''] = address.split('data:image/png;base64,')
  return decode(Buffer.from(data, 'base64'))
}

describe('pictures for a report', () => {
  it('are the scanned and the delivered frame, as a display of sRGB is to be sent them', async () => {
    const planes = flat([120, 110, 150])
    const made = await framePictures(planes, await builtKernel(), REQUEST)
    const signal = yCbCrToRgb([(120 - 16) / 219, (110 - 128) / 224, (150 - 128) / 224], 'bt709')
    const shown = (colour: readonly [number, number, number]) =>
      displaySignal(colour, 'bt709', 'srgb').map((level) => Math.round(255 * level))
    for (const [address, expected] of [
      [made.scanned, shown(signal)],
      [made.graded, shown(gradeColour(signal, REQUEST.grade))],
    ] as const) {
      const { width, height, channels, depth, data } = pixels(address)
      expect({ width, height, channels, depth }).toEqual({
        ...{ width: 12, height: 8, channels: 3, depth: 8 },
      })
      for (let i = 0; i < 3; i++)
        expect(Math.abs(Number(data[3 * 40 + i]) - (expected[i] ?? 0))).toBeLessThanOrEqual(1)
    }
    expect(made.frame).toBe(5)
  })

  it('are framed: what is blanked is black', async () => {
    const framing = { ...IDENTITY_FRAMING, blanking: 0.5 }
    const made = await framePictures(flat([200, 128, 128]), await builtKernel(), {
      ...REQUEST,
      framing,
      grade: IDENTITY_GRADE,
    })
    const { data } = pixels(made.graded)
    expect(data[0]).toBe(0)
    expect(data[3 * (4 * 12 + 6)]).toBeGreaterThan(180)
    expect(pixels(made.scanned).data[0]).toBeGreaterThan(180)
  })
})

describe('what a report is gathered from', () => {
  const shot = { frame: frame(0), scanned: DOT, graded: DOT }

  it('asks for each cue’s frame with its own values, then for the held frames', async () => {
    const job = reportedJob()
    const asked: PicturesRequest[] = []
    const told: number[] = []
    const { cues, held } = await gatherReport(
      job,
      sampleReel(),
      {
        pictures: async (request) => {
          asked.push(request)
          return request.frame === 49 ? undefined : shot
        },
        verdict: (index) => (index === 0 ? verdict() : undefined),
      },
      (done) => told.push(done),
    )
    // Middles of 0…99, 112…249 (past a ramp of 12), 250…399 and 400…999; the held frame is 300.
    expect(asked.map((request) => request.frame)).toEqual([49, 180, 324, 699, 300])
    expect(asked[1]).toMatchObject({
      grade: job.cues[cueId(2)]?.grade,
      framing: job.cues[cueId(2)]?.framing,
      ...{ width: 240, height: 135 },
    })
    expect(cues.get(cueId(1))).toEqual({ pictures: undefined, verdict: verdict() })
    expect(cues.get(cueId(2))).toEqual({ pictures: shot, verdict: undefined })
    expect(held).toEqual(new Map([['held-1' as HeldId, DOT]]))
    expect(told).toEqual([1, 2, 3, 4])
  })

  it('has pictures of a thousand cues at most, smaller where there are many', async () => {
    const reel = sampleReel({ frames: 1200 })
    const firsts = Array.from({ length: 1100 }, (_, index) => index)
    const asked: PicturesRequest[] = []
    const { cues } = await gatherReport(sampleJob(firsts, undefined, reel), reel, {
      pictures: async (request) => {
        asked.push(request)
        return shot
      },
      verdict: () => undefined,
    })
    expect(asked).toHaveLength(1000)
    expect(asked[0]?.width).toBe(160)
    expect(cues.size).toBe(1100)
  })

  it('stops where it is told to', async () => {
    const stop = new AbortController()
    const asked: number[] = []
    const gathering = gatherReport(
      sampleJob(),
      sampleReel(),
      {
        pictures: async (request) => {
          asked.push(request.frame)
          stop.abort()
          return shot
        },
        verdict: () => undefined,
      },
      undefined,
      stop.signal,
    )
    await expect(gathering).rejects.toThrow(/abort/i)
    expect(asked).toHaveLength(1)
  })

  it('names each list that is one file with the checksum of its text', () => {
    const lists = reportedLists(sampleJob(), REEL_ID)
    expect(lists.map(({ files }) => files.length).every((count) => count === 1)).toBe(true)
    const csv = lists.find(({ files }) => files[0]?.name.endsWith('.csv'))
    expect(csv?.files[0]?.sha256).toMatch(/^[0-9a-f]{64}$/u)
    expect(lists.flatMap(({ files }) => files).some(({ name }) => name.endsWith('.clf'))).toBe(
      false,
    )
  })

  it('takes the checksum of a file, or of the list of a sequence’s files', async () => {
    const file = (name: string, text: string) => new File([text], name)
    const told: number[] = []
    expect(await scanChecksum([file('a.mov', 'abc')], (done) => told.push(done))).toEqual({
      sha256: sha256OfText('abc'),
      files: 1,
    })
    expect(told).toEqual([3])
    const list = `${sha256OfText('one')}  1.png\n${sha256OfText('three')}  2.png\n`
    const pictures = [file('2.png', 'three'), file('1.png', 'one')]
    expect(await scanChecksum(pictures, (done) => told.push(done))).toEqual({
      sha256: sha256OfText(list),
      files: 2,
    })
    expect(told).toEqual([3, 5, 8])
  })
})
