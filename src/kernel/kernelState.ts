import { type KernelMemory, kernelMemory } from './kernelMemory.ts'
import type { KernelModule } from './kernelModule.ts'
import { type PowerTables, powerTables } from './powerTables.ts'

/** What the calls of one kernel share. */
export type KernelState = {
  readonly module: KernelModule
  readonly powers: PowerTables
  /** The memory above the power tables, all of it free: every call starts anew. */
  memory(): KernelMemory
}

export const kernelState = (module: KernelModule): KernelState => {
  const fixed = kernelMemory(module, module.heapBase())
  const powers = powerTables(module, fixed)
  const free = fixed.take(0)
  return { module, powers, memory: () => kernelMemory(module, free) }
}
