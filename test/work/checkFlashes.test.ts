import { expect, test } from 'vitest'
import { IDENTITY_GRADE } from '../../src/core/colour/grade.ts'
import { FLASH_CAUTION } from '../../src/core/flashes/caution.ts'
import type { Cue } from '../../src/core/job/job.ts'
import type { Planes } from '../../src/core/picture/planes.ts'
import { frame } from '../../src/core/time/frame.ts'
import { rate } from '../../src/core/time/rate.ts'
import { EBU_R103_V3 } from '../../src/core/tolerance/profile.ts'
import type { FrameSource } from '../../src/media/frameSource.ts'
import type { MediaFacts } from '../../src/media/mediaFacts.ts'
import { checkFlashes } from '../../src/work/checkFlashes.ts'
import { reelHandlers } from '../../src/work/reelHandlers.ts'
import { builtKernel } from '../kernel/builtKernel.ts'
import { planesOf } from '../kernel/randomPictures.ts'
import { sampleJob } from '../support/sampleJob.ts'

const [WIDTH, HEIGHT, FRAMES] = [48, 27, 60]
const CODING = { matrix: 'bt709', range: 'full' } as const
const RATE = rate(25)

/** Grey that is light on two frames of every four, from frame 20 to 39. */
const picture = (n: number): Planes => {
  const isLit = n >= 20 && n < 40 && n % 4 < 2
  return planesOf('rgb', 8, WIDTH, HEIGHT, () => (isLit ? 150 : 30))
}

const source: FrameSource = {
  facts: { width: WIDTH, height: HEIGHT, frames: FRAMES, rate: RATE } as MediaFacts,
  read: async (wanted) => picture(wanted),
  readRange: async function* (from, to) {
    for (let n: number = from; n < to; n++) yield { frame: frame(n), planes: picture(n) }
  },
  close: () => undefined,
}

/** The cues of a job that begin on these frames, with the gain of each. */
const checksOf = (firsts: readonly number[], gains: readonly number[] = []) => {
  const cues: readonly Cue[] = Object.values(
    sampleJob(firsts, (cue, i) => {
      const gain = gains[i] ?? 1
      return { ...cue, grade: { ...IDENTITY_GRADE, gain: [gain, gain, gain] } }
    }).cues,
  )
  return cues.map((cue, i) => ({
    cue,
    previous: cues[i - 1],
    end: frame(firsts[i + 1] ?? FRAMES),
  }))
}

const whole = async (firsts: readonly number[], gains?: readonly number[]) =>
  checkFlashes(
    source,
    await builtKernel(),
    { checks: checksOf(firsts, gains), coding: CODING, rate: RATE },
    () => undefined,
  )

test('flashes are found across the cuts between cues, wherever these are', async () => {
  const report = await whole([0])
  expect(report?.breaches).toMatchObject([{ kind: 'general', first: 20, last: 38, changes: 10 }])
  expect(await whole([0, 22, 25, 31])).toEqual(report)
})

test('it is the graded picture that flashes, or does not', async () => {
  expect((await whole([0], [0.4]))?.breaches).toEqual([])
  // Cues that are graded light and dark flash where the scan does not.
  const cuts = Array.from({ length: 8 }, (_, i) => 40 + 2 * i)
  const gains = [0.4, ...cuts.map((_, i) => (i % 2 === 0 ? 4 : 0.4))]
  expect((await whole([0, ...cuts], gains))?.breaches).toMatchObject([{ first: 40, last: 54 }])
})

test('a measured cue tells what flashes in it by itself', async () => {
  const handlers = reelHandlers(async () => ({ ok: true, value: source }), builtKernel)
  const session = { progress: () => undefined, transfer: () => undefined }
  const context = { ...session, signal: new AbortController().signal }
  await handlers.open({ files: [] }, context)
  const ask = (firsts: readonly number[], i: number) => {
    const check = checksOf(firsts)[i]
    if (!check) throw new Error('no such cue')
    const wants = { wantsCensus: false, wantsLook: false }
    return handlers.checkCue(
      { check, coding: CODING, profile: EBU_R103_V3, rate: RATE, ...wants },
      context,
    )
  }
  const all = await ask([0], 0)
  expect(all.verdict?.frames).toBe(FRAMES)
  expect(all.flashes?.breaches).toMatchObject([{ first: 20, last: 38 }])
  // Cut in two, neither part by itself has more than six changes.
  expect((await ask([0, 29], 0)).flashes).toBeUndefined()
  expect((await ask([0, 29], 1)).flashes).toBeUndefined()
  const report = await handlers.checkFlashes(
    { checks: checksOf([0, 29]), coding: CODING, rate: RATE },
    context,
  )
  expect(report).toMatchObject({ caution: FLASH_CAUTION, frames: FRAMES })
  expect(report?.breaches).toHaveLength(1)
})
