import { assert } from '../core/base/assert.ts'
import { MOST_COLOURS } from '../core/census/tallyColours.ts'
import type { RangeName } from '../core/picture/planes.ts'
import type { BandWork } from './bandWork.ts'
import { colourTableBytes, createColourCounter, type WasmColourCounter } from './colourCounter.ts'
import type { ColourCounter, KernelInput } from './kernel.ts'
import type { KernelState } from './kernelState.ts'

/** The counters of one kernel: there is memory for one at a time, taken when first asked for. */
export const colourCounters = ({ module, keep }: KernelState) => {
  let table = { address: 0, bytes: 0 }
  let current: WasmColourCounter | undefined
  return {
    begin: (range: RangeName, most = MOST_COLOURS): ColourCounter => {
      const bytes = colourTableBytes(most)
      if (bytes > table.bytes) table = { address: keep(bytes), bytes }
      current = createColourCounter(module, table.address, range, most)
      return current
    },
    /** The work of a counter on one picture. */
    work: (counter: ColourCounter, { planes, coding, framing }: KernelInput): BandWork => {
      assert(counter === current, 'colours are counted with a counter that has ended')
      return current.work(planes, framing, coding.pixelAspect)
    },
  }
}
