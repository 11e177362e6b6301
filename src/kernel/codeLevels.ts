import { codeScale } from '../core/colour/codeValues.ts'
import { type Grade, gradeChannel } from '../core/colour/grade.ts'
import type { Planes, RangeName } from '../core/picture/planes.ts'
import type { KernelMemory } from './kernelMemory.ts'
import type { KernelModule, Settings } from './kernelModule.ts'

/** With more bits than this, making the tables takes longer than they spare. */
const MOST_BITS = 12

/** The graded levels of every code of an R′G′B′ picture, made when a grade changes. */
export type CodeLevels = {
  settings(planes: Planes, range: RangeName, grade: Grade): Settings
}

export const codeLevels = (module: KernelModule, memory: KernelMemory): CodeLevels => {
  const tables = [0, 1, 2].map(() => ({ address: memory.take(4 << MOST_BITS), holds: '' }))
  memory.settle()
  const fill = (channel: 0 | 1 | 2, depth: number, range: RangeName, grade: Grade): number => {
    const table = tables[channel]
    if (!table) throw new Error('Bug: a picture has three channels')
    const [lift, gamma, gain] = [grade.lift[channel], grade.gamma[channel], grade.gain[channel]]
    const wanted = [depth, range, lift, gamma, gain].join()
    if (table.holds === wanted) return table.address
    const { black, peak } = codeScale(depth, range)
    const levels = new Float32Array(module.memory.buffer, table.address, 2 ** depth)
    for (let code = 0; code < levels.length; code++)
      levels[code] = gradeChannel((code - black) / (peak - black), lift, gamma, gain)
    table.holds = wanted
    return table.address
  }
  return {
    settings: ({ layout, depth }, range, grade) => {
      // Without a power the few sums of a level are quicker than to look it up.
      const isLinear = grade.gamma.every((gamma) => gamma === 1)
      if (layout !== 'rgb' || depth > MOST_BITS || isLinear) return { isTabled: false }
      return {
        isTabled: true,
        codeMask: 2 ** depth - 1,
        gradedR: fill(0, depth, range, grade),
        gradedG: fill(1, depth, range, grade),
        gradedB: fill(2, depth, range, grade),
      }
    },
  }
}
