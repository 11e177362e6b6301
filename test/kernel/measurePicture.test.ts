import { expect, test } from 'vitest'
import { signalToCode } from '../../src/core/colour/codeValues.ts'
import { LUMA_WEIGHTS } from '../../src/core/colour/lumaWeights.ts'
import { deliverPicture } from '../../src/core/picture/deliverPicture.ts'
import { IDENTITY_FRAMING } from '../../src/core/picture/framing.ts'
import type { Layout } from '../../src/core/picture/planes.ts'
import { EBU_R103_V3 } from '../../src/core/tolerance/profile.ts'
import { builtKernel } from './builtKernel.ts'
import { randomFraming, randomGrade, seeded, shadedPlanes } from './randomPictures.ts'

const kernel = await builtKernel()
const CODING = { matrix: 'bt709', range: 'narrow' } as const
const LAYOUTS: readonly [Layout, number][] = [
  ['420', 8],
  ['422', 10],
  ['444', 10],
  ['rgb', 10],
]

for (const [layout, depth] of LAYOUTS)
  test(`one pass reads what single calls read: ${layout}, ${depth} bit`, () => {
    const random = seeded(depth + layout.length)
    for (const framing of [IDENTITY_FRAMING, randomFraming(random)]) {
      const planes = shadedPlanes(random, layout, depth, 333, 301)
      const input = { planes, coding: CODING, grade: randomGrade(random), framing }
      const reading = kernel.measurePicture(input, 'bt709', EBU_R103_V3, {
        waveformColumns: 100,
        vectorscopeSize: 64,
      })
      const codes = kernel.deliverCodes(input, 'bt709')
      expect(reading.levels).toEqual(kernel.measureLevels(input, 'bt709', EBU_R103_V3))
      expect(reading.waveform).toEqual(kernel.lumaWaveform(codes, 100))
      expect(reading.vectorscope).toEqual(kernel.vectorscope(codes, 64))
      expect(reading.parade).toBeUndefined()
      expect(reading.histograms).toBeUndefined()
    }
  })

/** How many of `counts` must move to other levels to become `reference`, as a part. */
const partMoved = (counts: Uint32Array, reference: Uint32Array): number =>
  counts.reduce((sum, count, i) => sum + Math.abs(count - (reference[i] ?? 0)), 0) /
  (2 * reference.reduce((sum, count) => sum + count, 0))

for (const [layout, depth] of LAYOUTS)
  test(`histograms and parade count the reference's levels: ${layout}, ${depth} bit`, () => {
    const random = seeded(depth * 3)
    const planes = shadedPlanes(random, layout, depth, 150, 121)
    const input = { planes, coding: CODING, grade: randomGrade(random), framing: IDENTITY_FRAMING }
    const { histograms, parade } = kernel.measurePicture(input, 'bt709', EBU_R103_V3, {
      histograms: true,
      paradeColumns: 50,
    })
    const picture = deliverPicture(planes, CODING, input.grade, IDENTITY_FRAMING)
    const [kr, kg, kb] = LUMA_WEIGHTS.bt709
    const levelOf = (signal: number) => signalToCode(signal, 10, 'narrow') >> 2
    const planesOfPicture = [picture.r, picture.g, picture.b]
    for (const [c, name] of (['r', 'g', 'b'] as const).entries()) {
      const histogram = new Uint32Array(256)
      const columns = new Uint32Array(50 * 256)
      planesOfPicture[c]?.forEach((signal, i) => {
        const level = levelOf(signal)
        histogram[level] = (histogram[level] ?? 0) + 1
        const place = Math.floor(((i % 150) * 50) / 150) * 256 + level
        columns[place] = (columns[place] ?? 0) + 1
      })
      // f32 may put a level on the edge of two codes into the other one.
      expect(partMoved(histograms?.[name] ?? new Uint32Array(256), histogram)).toBeLessThan(0.001)
      expect(partMoved(parade?.[c] ?? new Uint32Array(50 * 256), columns)).toBeLessThan(0.001)
    }
    const luma = new Uint32Array(256)
    picture.r.forEach((r, i) => {
      const level = levelOf(kr * r + kg * (picture.g[i] ?? 0) + kb * (picture.b[i] ?? 0))
      luma[level] = (luma[level] ?? 0) + 1
    })
    expect(partMoved(histograms?.y ?? new Uint32Array(256), luma)).toBeLessThan(0.001)
  })
