import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { buildCensus } from '../../src/core/census/buildCensus.ts'
import type { Grade } from '../../src/core/colour/grade.ts'
import { createFlashGatherer } from '../../src/core/flashes/flashGatherer.ts'
import { type Framing, IDENTITY_FRAMING } from '../../src/core/picture/framing.ts'
import type { Coding, Planes } from '../../src/core/picture/planes.ts'
import { frame } from '../../src/core/time/frame.ts'
import { rate } from '../../src/core/time/rate.ts'
import { EBU_R103_V3 } from '../../src/core/tolerance/profile.ts'
import { loadKernel } from '../../src/kernel/loadKernel.ts'
import { between, seeded } from '../kernel/randomPictures.ts'
import { BENCH_GRADE } from './benchGrade.ts'

const UNFILTERED = { ...EBU_R103_V3, filtered: false }

/** The value that `part` of the values do not pass. */
const quantile = (values: readonly number[], part: number): number =>
  [...values].sort((a, b) => a - b)[Math.floor(part * (values.length - 1))] ?? 0

/** Milliseconds of processor time, as ffmpeg is timed: other programs count less. */
const timed = (work: () => void): number => {
  const begun = process.cpuUsage()
  work()
  const { user, system } = process.cpuUsage(begun)
  return (user + system) / 1000
}

/** Part of the rounds that count: on a shared machine the others tell of who else was at work. */
const UNDISTURBED = 0.2

/**
 * Milliseconds of each work on a picture, the works taking turns picture by picture: the slowest of
 * the least disturbed fifth.
 */
export const inTurns = <Name extends string>(
  pictures: readonly Planes[],
  works: Readonly<Record<Name, (planes: Planes) => void>>,
): Record<Name, number> => {
  const names = Object.keys(works) as Name[]
  const times = Object.fromEntries(names.map((name) => [name, [] as number[]]))
  for (const [i, planes] of [...pictures.slice(0, 4), ...pictures].entries())
    for (const name of names) {
      const time = timed(() => works[name](planes))
      // The first rounds are for the engine to compile.
      if (i >= 4) times[name]?.push(time)
    }
  return Object.fromEntries(
    names.map((name) => [name, quantile(times[name] ?? [], UNDISTURBED)]),
  ) as Record<Name, number>
}

/** What the kernel needs for pictures of 1080p in 10-bit R′G′B′: milliseconds a frame. */
export const kernelTimes = async (root: string, pictures: readonly Planes[]) => {
  const loaded = await loadKernel(readFileSync(join(root, '.cache/kernel/kernel.wasm')))
  if (!loaded.ok) throw new Error(loaded.problems[0].says)
  const kernel = loaded.value
  const coding: Coding = { matrix: 'bt709', range: 'full' }
  const input = (planes: Planes) => ({
    planes,
    coding,
    grade: BENCH_GRADE,
    framing: IDENTITY_FRAMING,
  })
  const framed = (planes: Planes, change: Partial<Framing>) =>
    kernel.measurePicture(
      { ...input(planes), framing: { ...IDENTITY_FRAMING, zoom: 1.05, pan: 0.013, ...change } },
      'bt709',
      UNFILTERED,
      { histograms: true },
    )
  const bytes = pictures[0]?.samples.reduce((sum, { byteLength }) => sum + byteLength, 0) ?? 0
  const room = new Uint8Array(bytes)
  const codes = pictures.slice(0, 1).map((planes) => kernel.deliverCodes(input(planes), 'bt709'))
  const [held] = codes
  if (!held) throw new Error('no picture')
  const counter = kernel.countColours('full')
  const flashes = createFlashGatherer(held.width, held.height, rate(25))
  let watched = 0
  // As ffmpeg draws into frames it has already, these count into arrays that are there.
  const waveform = kernel.lumaWaveform(held, held.width)
  const parade = [0, 1, 2].map(() => waveform.slice())
  const scope = kernel.vectorscope(held, 256)
  const perFrame = inTurns(pictures, {
    copy: ({ samples }) => {
      let at = 0
      for (const { buffer, byteOffset, byteLength } of samples) {
        room.set(new Uint8Array(buffer, byteOffset, byteLength), at)
        at += byteLength
      }
    },
    fused: (planes) =>
      kernel.measurePicture(input(planes), 'bt709', UNFILTERED, { histograms: true }),
    framed: (planes) => framed(planes, {}),
    turned: (planes) => framed(planes, { rotation: 1.3 }),
    filtered: (planes) =>
      kernel.measurePicture(input(planes), 'bt709', EBU_R103_V3, { histograms: true }),
    levels: (planes) => kernel.measureLevels(input(planes), 'bt709', EBU_R103_V3),
    levelsAndColours: (planes) =>
      kernel.measureLevels(input(planes), 'bt709', EBU_R103_V3, counter),
    levelsAndFlashes: (planes) => {
      kernel.measureLevels(input(planes), 'bt709', EBU_R103_V3, undefined, flashes.cells)
      flashes.add(frame(watched++))
    },
    waveform: () => {
      kernel.lumaWaveform(held, held.width, waveform)
    },
    vectorscope: () => {
      kernel.vectorscope(held, 256, scope)
    },
    parade: ({ samples }) => {
      for (const [c, y] of samples.entries())
        kernel.lumaWaveform({ ...held, y: y as Uint16Array }, held.width, parade[c])
    },
  })
  const tally = counter.tally()
  if (!tally) throw new Error('no colours')
  const census = buildCensus(tally, coding)
  const read = kernel.censusReader(census)
  const random = seeded(7)
  const three = (low: number, high: number) =>
    [0, 1, 2].map(() => between(random, low, high)) as unknown as Grade['lift']
  const verdicts = Array.from({ length: 300 }, () => {
    const grade: Grade = {
      lift: three(-0.06, 0.06),
      gamma: three(0.8, 1.3),
      gain: three(0.9, 1.15),
      saturation: between(random, 0.8, 1.4),
    }
    return timed(() => read(grade, UNFILTERED))
  }).slice(50)
  return {
    ...perFrame,
    verdict: quantile(verdicts, 0.5),
    verdictOf95: quantile(verdicts, 0.95),
    colours: census.keys.length,
    isExact: census.shape.firstDrop === 0 && census.shape.otherDrop === 0,
  }
}
