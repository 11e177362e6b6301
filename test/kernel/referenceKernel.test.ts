import { expect, test } from 'vitest'
import { buildCensus } from '../../src/core/census/buildCensus.ts'
import { IDENTITY_FRAMING } from '../../src/core/picture/framing.ts'
import type { Layout } from '../../src/core/picture/planes.ts'
import { EBU_R103_V3 } from '../../src/core/tolerance/profile.ts'
import { referenceKernel } from '../../src/kernel/referenceKernel.ts'
import { builtKernel } from './builtKernel.ts'
import { randomFraming, randomGrade, seeded, shadedPlanes } from './randomPictures.ts'

const kernel = await builtKernel()
const reference = referenceKernel()
const CODING = { matrix: 'bt709', range: 'narrow' } as const

/** Part of the counts that must move to make one list the other. */
const partMoved = (counts: Uint32Array, others: Uint32Array): number =>
  counts.reduce((sum, count, i) => sum + Math.abs(count - (others[i] ?? 0)), 0) /
  (2 * others.reduce((sum, count) => sum + count, 0))

const LAYOUTS: readonly [Layout, number][] = [
  ['420', 8],
  ['422', 10],
  ['rgb', 10],
]

for (const [layout, depth] of LAYOUTS)
  test(`the reference in the kernel's place answers as it does: ${layout}, ${depth} bit`, () => {
    const random = seeded(depth)
    const counters = [kernel.countColours('narrow'), reference.countColours('narrow')] as const
    for (const framing of [IDENTITY_FRAMING, randomFraming(random)]) {
      const planes = shadedPlanes(random, layout, depth, 133, 70)
      const input = { planes, coding: CODING, grade: randomGrade(random), framing }
      const wants = {
        waveformColumns: 40,
        paradeColumns: 20,
        vectorscopeSize: 64,
        histograms: true,
      }
      const fast = kernel.measurePicture(input, 'bt709', EBU_R103_V3, wants)
      const slow = reference.measurePicture(input, 'bt709', EBU_R103_V3, wants)
      for (const figure of ['r', 'g', 'b', 'y'] as const) {
        expect(fast.levels[figure].low).toBeCloseTo(slow.levels[figure].low, 4)
        expect(fast.levels[figure].high).toBeCloseTo(slow.levels[figure].high, 4)
      }
      const pairs = [
        [fast.waveform, slow.waveform],
        [fast.vectorscope, slow.vectorscope],
        ...[0, 1, 2].map((c) => [fast.parade?.[c], slow.parade?.[c]]),
        ...(['r', 'g', 'b', 'y'] as const).map((c) => [fast.histograms?.[c], slow.histograms?.[c]]),
      ] as const
      for (const [counts, others] of pairs) {
        if (!counts || !others) throw new Error('not counted')
        expect(counts.length).toBe(others.length)
        expect(partMoved(counts, others)).toBeLessThan(0.002)
      }
      kernel.measureLevels(input, 'bt709', EBU_R103_V3, counters[0])
      reference.measureLevels(input, 'bt709', EBU_R103_V3, counters[1])
      const codes = kernel.deliverCodes(input, 'bt709')
      const slowCodes = reference.deliverCodes(input, 'bt709')
      for (const plane of ['y', 'cb', 'cr'] as const)
        codes[plane].forEach((code, i) => {
          if (Math.abs(code - (slowCodes[plane][i] ?? -9)) > 1) throw new Error(`${plane} ${i}`)
        })
      expect(reference.lumaWaveform(codes, 30)).toEqual(kernel.lumaWaveform(codes, 30))
      expect(reference.vectorscope(codes, 50)).toEqual(kernel.vectorscope(codes, 50))
    }
    const verdicts = counters.map((counter, i) => {
      const tally = counter.tally()
      if (!tally) throw new Error('no colours')
      const census = buildCensus(tally, CODING)
      const grade = randomGrade(seeded(3))
      return [kernel, reference][i]?.censusReader(census)(grade, EBU_R103_V3)
    })
    expect(verdicts[0]).toEqual(verdicts[1])
  })
