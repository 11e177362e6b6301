import type { MatrixName } from '../core/picture/planes.ts'
import type { ToleranceProfile } from '../core/tolerance/profile.ts'
import {
  type BandCounters,
  columnCounters,
  LEVELS,
  levelPairCounters,
  vectorscopeCounters,
} from './bandCounters.ts'
import type { BandWork } from './bandWork.ts'
import { codeSettings } from './codeSettings.ts'
import type { KernelInput, PictureReading, PictureWants } from './kernel.ts'
import { applySettings } from './kernelModule.ts'
import type { KernelState } from './kernelState.ts'
import { measureLevels } from './measureLevels.ts'

/** See `Kernel.measurePicture`. */
export const measurePicture = (
  state: KernelState,
  input: KernelInput,
  matrix: MatrixName,
  profile: ToleranceProfile,
  { waveformColumns, paradeColumns, vectorscopeSize, histograms }: PictureWants,
): PictureReading => {
  const { module } = state
  const { width } = input.planes
  const codes = { yCodes: 0, cbCodes: 0, crCodes: 0, rCodes: 0, gCodes: 0, bCodes: 0 }
  const [y, cb, cr] = [() => codes.yCodes, () => codes.cbCodes, () => codes.crCodes] as const
  const [r, g, b] = [() => codes.rCodes, () => codes.gCodes, () => codes.bCodes] as const
  const waveform = waveformColumns && columnCounters(module, y, width, waveformColumns)
  const parade = paradeColumns
    ? [r, g, b].map((plane) => columnCounters(module, plane, width, paradeColumns))
    : undefined
  const vectorscope =
    vectorscopeSize && vectorscopeCounters(module, { cb, cr }, width, vectorscopeSize)
  const levelsOf = histograms
    ? [levelPairCounters(module, r, g, width), levelPairCounters(module, b, y, width)]
    : undefined
  const counters: readonly BandCounters[] = [
    ...(waveform ? [waveform] : []),
    ...(parade ?? []),
    ...(vectorscope ? [vectorscope] : []),
    ...(levelsOf ?? []),
  ]
  const work: BandWork = {
    take: (memory, mostRows) => {
      for (const name of Object.keys(codes) as (keyof typeof codes)[])
        codes[name] = memory.take(mostRows * width * 2)
      for (const each of counters) each.take(memory)
    },
    begin: (buffer) => {
      applySettings(module, {
        ...codeSettings(input.grade.saturation, matrix),
        ...codes,
        keepsCodes: true,
      })
      for (const each of counters) each.begin(buffer)
    },
    onBand: ({ first, end }) => {
      for (const each of counters) each.add(end - first)
    },
  }
  const levels = measureLevels(state, input, matrix, profile, counters.length > 0 ? [work] : [])
  const [red, green, blue] = (parade ?? []).map((each) => each.counts())
  const [ofR, ofG, ofB, ofY] = (levelsOf ?? []).flatMap((each) => {
    const counts = each.counts()
    return [counts.slice(0, LEVELS), counts.slice(LEVELS)]
  })
  return {
    levels,
    ...(waveform && { waveform: waveform.counts() }),
    ...(red && green && blue && { parade: [red, green, blue] as const }),
    ...(vectorscope && { vectorscope: vectorscope.counts() }),
    ...(ofR && ofG && ofB && ofY && { histograms: { r: ofR, g: ofG, b: ofB, y: ofY } }),
  }
}
