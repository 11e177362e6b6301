import { assert } from '../core/base/assert.ts'
import { problem } from '../core/base/problem.ts'
import type { Coding, Planes } from '../core/picture/planes.ts'
import type { Kernel } from '../kernel/kernel.ts'
import { MediaError } from '../media/mediaError.ts'
import type { InstrumentCalls } from './instrumentCalls.ts'
import type { Handlers } from './rpc.ts'

/** The calls of the instrument worker, given how the kernel is loaded there. */
export const instrumentHandlers = (
  loadKernel: () => Promise<Kernel>,
): Handlers<InstrumentCalls> => {
  let held: { readonly planes: Planes; readonly coding: Coding } | undefined
  return {
    setFrame: (frame) => {
      held = frame
      return undefined
    },
    measure: async (request, { transfer }) => {
      const kernel = await loadKernel()
      const { profile } = request
      if (!held)
        throw new MediaError(problem('missing', 'There is no frame to measure; open a reel.'))
      const input = { ...held, grade: request.grade, framing: request.framing }
      const { matrix } = held.coding
      const reading = kernel.measurePicture(input, matrix, profile, {
        waveformColumns: request.waveformColumns,
        vectorscopeSize: request.vectorscopeSize,
      })
      const { waveform, vectorscope, levels } = reading
      assert(waveform !== undefined && vectorscope !== undefined, 'both were asked for')
      transfer(waveform.buffer, vectorscope.buffer)
      return { waveform, vectorscope, levels }
    },
  }
}
