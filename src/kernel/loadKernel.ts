import { problem } from '../core/base/problem.ts'
import { fail, ok, type Result } from '../core/base/result.ts'
import { createCensusReader } from '../core/census/censusVerdict.ts'
import { censusQueries } from './censusQueries.ts'
import { colourCounters } from './colourCounters.ts'
import { deliver } from './deliver.ts'
import { deliverCodes } from './deliverCodes.ts'
import type { Kernel } from './kernel.ts'
import { isKernelModule } from './kernelModule.ts'
import { kernelState } from './kernelState.ts'
import { lumaWaveform } from './lumaWaveform.ts'
import { measureLevels } from './measureLevels.ts'
import { measurePicture } from './measurePicture.ts'
import { referenceKernel } from './referenceKernel.ts'

import { vectorscope } from './vectorscope.ts'

/** The smallest module with a vector in it: `(func (drop (v128.const i64x2 0 0)))`. */
const VECTOR_MODULE = new Uint8Array([
  ...[0, 0x61, 0x73, 0x6d, 1, 0, 0, 0, 1, 4, 1, 0x60, 0, 0, 3, 2, 1, 0, 10, 23, 1, 21, 0, 0xfd, 12],
  ...new Uint8Array(16),
  ...[0x1a, 0x0b],
])

const hasVectors = (): boolean =>
  typeof WebAssembly === 'object' && WebAssembly.validate(VECTOR_MODULE)

/**
 * Compiles the kernel from the bytes of `kernel.wasm`. On a host without WebAssembly vectors it is
 * the reference that is returned; the caller is to say so.
 */
export const loadKernel = async (bytes: BufferSource): Promise<Result<Kernel>> => {
  if (!hasVectors()) return ok(referenceKernel())
  const unusable = fail(
    problem(
      'malformed',
      'The kernel file is not the WebAssembly module of this version; build it again.',
      { file: 'kernel.wasm' },
    ),
  )
  let exports: WebAssembly.Exports
  try {
    exports = (await WebAssembly.instantiate(bytes, {})).instance.exports
  } catch (error) {
    if (error instanceof WebAssembly.CompileError || error instanceof WebAssembly.LinkError)
      return unusable
    throw error
  }
  if (!isKernelModule(exports)) return unusable
  const state = kernelState(exports)
  const counters = colourCounters(state)
  const queriesOf = censusQueries(state)
  return ok({
    isReference: false,
    countColours: counters.begin,
    censusReader: (census) => createCensusReader(census, queriesOf(census)),
    deliverCodes: (input, matrix, into) => deliverCodes(state, input, matrix, into),
    deliver: (input, options, into) => deliver(state, input, options, into),
    measureLevels: (input, matrix, profile, colours, cells) => {
      const works = colours ? [counters.work(colours, input)] : []
      return measureLevels(state, input, matrix, profile, works, cells)
    },
    measurePicture: (input, matrix, profile, wants) =>
      measurePicture(state, input, matrix, profile, wants),
    lumaWaveform: (codes, columns, into) => lumaWaveform(state, codes, columns, into),
    vectorscope: (codes, size, into) => vectorscope(state, codes, size, into),
  })
}
