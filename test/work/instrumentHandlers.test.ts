import { describe, expect, it } from 'vitest'
import { IDENTITY_GRADE } from '../../src/core/colour/grade.ts'
import { deliverPicture } from '../../src/core/picture/deliverPicture.ts'
import { everySecondPair } from '../../src/core/picture/everySecondPair.ts'
import { IDENTITY_FRAMING } from '../../src/core/picture/framing.ts'
import { EBU_R103_V3 } from '../../src/core/tolerance/profile.ts'
import type { PictureWants } from '../../src/kernel/kernel.ts'
import { instrumentHandlers } from '../../src/work/instrumentHandlers.ts'
import type { CallContext } from '../../src/work/rpc.ts'
import { builtKernel } from '../kernel/builtKernel.ts'
import { noisePlanes, seeded, shadedPlanes } from '../kernel/randomPictures.ts'

const coding = { matrix: 'bt709', range: 'narrow' } as const
const BRIGHT = { ...IDENTITY_GRADE, gain: [1.6, 1.6, 1.6] as const }

const setUp = async () => {
  const kernel = await builtKernel()
  const handlers = instrumentHandlers(async () => kernel)
  const moved: ArrayBufferLike[] = []
  const context: CallContext<never> = {
    progress: () => undefined,
    signal: new AbortController().signal,
    transfer: (...buffers) => moved.push(...buffers),
  }
  const base = { coding, grade: IDENTITY_GRADE, framing: IDENTITY_FRAMING, profile: EBU_R103_V3 }
  return {
    kernel,
    moved,
    setFrame: handlers.setFrame,
    context,
    measure: (
      wants: PictureWants,
      signal: 'graded' | 'scanned' = 'graded',
      grade: typeof IDENTITY_GRADE = IDENTITY_GRADE,
      isCoarse = false,
    ) => handlers.measure({ ...base, wants, signal, grade, isCoarse }, context),
  }
}

describe('the instrument worker', () => {
  it('refuses to measure before there is a frame', async () => {
    const { measure } = await setUp()
    await expect(measure({})).rejects.toThrow('no frame')
  })

  it('counts what is asked for and nothing else, and moves it without copying', async () => {
    const { measure, setFrame, context, moved } = await setUp()
    setFrame(shadedPlanes(seeded(1), '420', 8, 64, 40), context)
    const luma = await measure({ waveformColumns: 20, vectorscopeSize: 64 })
    expect(Object.keys(luma.shown).sort()).toEqual(['vectorscope', 'waveform'])
    expect(moved).toHaveLength(2)
    const parade = await measure({ paradeColumns: 10 })
    expect(Object.keys(parade.shown)).toEqual(['parade'])
    expect(moved).toHaveLength(5)
    const histogram = await measure({ histograms: true })
    expect(histogram.shown.histograms?.y.reduce((sum, count) => sum + count, 0)).toBe(64 * 40)
  })

  it('shows the scanned signal on request, while levels stay those of the graded one', async () => {
    const { measure, setFrame, context } = await setUp()
    setFrame(shadedPlanes(seeded(2), '422', 10, 64, 40), context)
    const wants = { waveformColumns: 8, vectorscopeSize: 64 }
    const plain = await measure(wants)
    const graded = await measure(wants, 'graded', BRIGHT)
    const scanned = await measure(wants, 'scanned', BRIGHT)
    expect(scanned.shown.waveform).toEqual(plain.shown.waveform)
    expect(scanned.shown.waveform).not.toEqual(graded.shown.waveform)
    expect(scanned.levels).toEqual(graded.levels)
  })

  it('says how far the signal goes, unfiltered, only where it is past the codes', async () => {
    const { measure, setFrame, context } = await setUp()
    const quiet = shadedPlanes(seeded(3), '444', 10, 64, 40)
    const middling = { ...quiet, samples: quiet.samples.map((p) => p.map(() => 500)) } as never
    setFrame(middling, context)
    expect((await measure({ paradeColumns: 8 })).past).toBeUndefined()
    const loud = noisePlanes(seeded(4), 'rgb', 10, 64, 40)
    setFrame(loud, context)
    const reading = await measure({ paradeColumns: 8 }, 'graded', BRIGHT)
    const picture = deliverPicture(loud, coding, BRIGHT, IDENTITY_FRAMING)
    expect(reading.past?.r.high).toBeCloseTo(Math.max(...picture.r), 5)
    expect(reading.past?.b.low).toBeCloseTo(Math.min(...picture.b), 5)
    expect(reading.levels.r.high).toBeLessThan(reading.past?.r.high ?? 0)
  })

  it('measures every second pair of lines coarsely, and all of them again when asked to', async () => {
    const { measure, setFrame, context } = await setUp()
    const planes = shadedPlanes(seeded(5), '420', 8, 64, 40)
    setFrame(planes, context)
    const wants = { histograms: true, waveformColumns: 8 }
    const whole = await measure(wants)
    const coarse = await measure(wants, 'graded', IDENTITY_GRADE, true)
    const sum = (counts: Uint32Array | undefined) => counts?.reduce((a, b) => a + b, 0)
    expect(sum(coarse.shown.histograms?.y)).toBe(64 * 20)
    expect(sum(coarse.shown.waveform)).toBe(64 * 20)
    expect(coarse.levels.pixels).toBe(64 * 20)
    setFrame(everySecondPair(planes), context)
    expect((await measure(wants)).shown).toEqual(coarse.shown)
    setFrame(planes, context)
    expect(await measure(wants)).toEqual(whole)
  })
})
