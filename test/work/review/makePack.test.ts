import { unzipSync } from 'fflate'
import { expect, it } from 'vitest'
import { cueLook, lookSum } from '../../../src/core/agreement/cueLook.ts'
import type { PackCue } from '../../../src/core/agreement/pack/packContents.ts'
import { packHtml } from '../../../src/core/agreement/pack/packHtml.ts'
import { IDENTITY_GRADE } from '../../../src/core/colour/grade.ts'
import { cuesOfReel } from '../../../src/core/job/cueList.ts'
import type { PackId } from '../../../src/core/job/recordIds.ts'
import { EBU_R103_V3 } from '../../../src/core/tolerance/profile.ts'
import { gatherPack, packContents, packPictureSize } from '../../../src/work/review/makePack.ts'
import { packEstimate } from '../../../src/work/review/packEstimate.ts'
import { packZip } from '../../../src/work/review/packFile.ts'
import type { ReviewRequest } from '../../../src/work/review/reviewPictures.ts'
import { cueId, REEL_ID, sampleJob, sampleReel } from '../../support/sampleJob.ts'

const WARM = { ...IDENTITY_GRADE, gain: [1.05, 1, 0.95] as const }

const JOB = sampleJob([0, 100, 250, 400], (cue, i) => ({
  ...cue,
  note: `the note of ${i + 1}`,
  ramp: i === 2 ? 20 : 0,
  alternates: i === 1 ? [{ name: 'warm', grade: WARM }] : [],
}))
const REEL = JOB.reels[REEL_ID] ?? sampleReel()
const PARTICULARS = {
  id: 'pack-1' as PackId,
  madeAt: '2026-11-27T09:00:00Z',
  madeFor: '',
  key: null,
}

/** Pictures that say what was asked for. */
const gathered = async (cues: readonly number[], damaged: readonly number[] = [], size = 960) => {
  const asked: ReviewRequest[] = []
  const found = await gatherPack(
    JOB,
    REEL,
    { cues: cues.map(cueId), size },
    {
      pictures: async (request) => {
        asked.push(request)
        if (damaged.includes(request.frame)) return undefined
        const { frame, grade, alternates } = request
        const address = (words: string) => `data:image/png;base64,${btoa(words)}`
        return {
          before: address(`before ${frame}`),
          after: address(`after ${frame} ${grade.saturation}`),
          alternates: alternates.map(({ gain }) => address(`alternate ${gain[0]}`)),
        }
      },
    },
  )
  return { ...found, asked }
}

it('shows the chosen cues in the order of the reel, each by the middle frame past its ramp', async () => {
  const { cues, left, asked } = await gathered([3, 2])
  expect(left).toEqual([])
  expect(cues.map(({ number, frame, timecode }) => [number, frame, timecode])).toEqual([
    [2, 174, '10:00:04:00'],
    [3, 334, '10:00:10:00'],
  ])
  expect(asked[0]).toMatchObject({ width: 960, height: 540, grade: IDENTITY_GRADE })
  const ground = { reel: REEL, cues: cuesOfReel(JOB, REEL_ID), profile: EBU_R103_V3 }
  const look = cueLook(ground, 1)
  expect(look && cues[0]?.sha256 === lookSum(look)).toBe(true)
  const warm = cueLook(ground, 1, WARM)
  expect(cues[0]?.alternates).toMatchObject([
    { name: 'warm', sha256: warm && lookSum(warm), picture: expect.stringContaining('base64') },
  ])
})

it('leaves out and names a cue whose picture cannot be read', async () => {
  const { cues, left } = await gathered([1, 2], [174])
  expect(cues.map(({ number }) => number)).toEqual([1])
  expect(left.map(({ says }) => says)).toEqual(['Cue 2 is left out: its picture cannot be read.'])
})

it('holds nothing of the job but the chosen cues, and of these no notes', async () => {
  const { cues } = await gathered([2])
  const html = packHtml(packContents(JOB, REEL, cues, PARTICULARS), { script: '', style: '' })
  expect(html).toContain('cue-2')
  expect(html).not.toMatch(/cue-1|cue-3|cue-4|the note of|orlop-1\.mov/u)
})

it('stops when it is told to', async () => {
  const stop = new AbortController()
  const work = gatherPack(
    JOB,
    REEL,
    { cues: [1, 2, 3].map(cueId), size: 960 },
    {
      pictures: async () => {
        stop.abort()
        return { before: '', after: '', alternates: [] }
      },
    },
    undefined,
    stop.signal,
  )
  await expect(work).rejects.toThrow('abort')
})

it('reckons a size from some cues that is near that of all', async () => {
  const picture = (bytes: number) => `data:image/jpeg;base64,${'A'.repeat(bytes)}`
  const { cues } = await gathered([1, 2, 3, 4])
  const real = cues.map(
    (cue, i): PackCue => ({
      ...cue,
      before: picture(100_000 + 5000 * i),
      after: picture(110_000 - 3000 * i),
      alternates: cue.alternates.map((each) => ({ ...each, picture: picture(105_000) })),
    }),
  )
  const whole = packHtml(packContents(JOB, REEL, real, PARTICULARS), { script: '', style: '' })
  const reckoned = packEstimate(cuesOfReel(JOB, REEL_ID), real.slice(0, 2), []) ?? 0
  expect(reckoned / whole.length).toBeGreaterThan(0.9)
  expect(reckoned / whole.length).toBeLessThan(1.1)
})

it('never makes a picture larger than the scan is, and keeps its shape', () => {
  const { media } = sampleReel()
  expect(packPictureSize(REEL, 4000)).toEqual({ width: 1920, height: 1080 })
  expect(packPictureSize(REEL, Number.POSITIVE_INFINITY)).toEqual({ width: 1920, height: 1080 })
  const tall = sampleReel({ media: { ...media, width: 720, height: 576, displayAspect: 4 / 3 } })
  expect(packPictureSize(tall, 960)).toEqual({ width: 768, height: 576 })
  expect(packPictureSize(tall, 384)).toEqual({ width: 384, height: 288 })
})

it('is a .zip with the page and its stills by number', async () => {
  const { cues } = await gathered([2])
  const address = cues[0]?.before ?? ''
  const zip = packZip(
    packContents(JOB, REEL, cues, PARTICULARS),
    { script: '', style: '' },
    'Orlop',
    [{ number: 2, kind: 'before', address }],
  )
  const files = unzipSync(zip)
  expect(Object.keys(files)).toEqual(['Orlop.html', 'stills/cue-0002-before.png'])
  expect(new TextDecoder().decode(files['stills/cue-0002-before.png'])).toBe('before 174')
})
