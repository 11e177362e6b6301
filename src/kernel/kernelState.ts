import { type BaseCurves, baseCurves } from './baseCurves.ts'
import { type CodeLevels, codeLevels } from './codeLevels.ts'
import { type KernelMemory, kernelMemory } from './kernelMemory.ts'
import type { KernelModule } from './kernelModule.ts'
import { type PowerTables, powerTables } from './powerTables.ts'
import { type ProcessPrograms, processPrograms } from './processProgram.ts'

/** What the calls of one kernel share. */
export type KernelState = {
  readonly module: KernelModule
  readonly powers: PowerTables
  readonly bases: BaseCurves
  readonly lists: ProcessPrograms
  readonly codes: CodeLevels
  /** The memory above what is kept, all of it free: every call starts anew. */
  memory(): KernelMemory
  /** How often that memory was begun anew: what was laid into it before is void. */
  uses(): number
  /** The address of `bytes` bytes that are kept from now on. Not to be called within a call. */
  keep(bytes: number): number
}

export const kernelState = (module: KernelModule): KernelState => {
  const fixed = kernelMemory(module, module.heapBase())
  const powers = powerTables(module, fixed)
  const bases = baseCurves(module, fixed)
  const codes = codeLevels(module, fixed)
  let free = fixed.take(0)
  let count = 0
  return {
    module,
    powers,
    bases,
    lists: processPrograms(),
    codes,
    memory: () => {
      count++
      return kernelMemory(module, free)
    },
    uses: () => count,
    keep: (bytes) => {
      count++
      const address = fixed.take(bytes)
      fixed.settle()
      free = fixed.take(0)
      return address
    },
  }
}
