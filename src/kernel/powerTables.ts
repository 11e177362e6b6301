import type { Triple } from '../core/colour/triple.ts'
import type { KernelMemory } from './kernelMemory.ts'
import type { KernelModule } from './kernelModule.ts'
import { fillPowerTable, POWER_TABLE_LENGTH } from './powerTable.ts'

/** The power tables of the last grades: three at fixed addresses, made when a gamma changes. */
export type PowerTables = {
  /** The addresses of the tables of 1/gamma for R′, G′, B′. Channels alike share one. */
  addresses(gamma: Triple): readonly [number, number, number]
}

export const powerTables = (module: KernelModule, memory: KernelMemory): PowerTables => {
  const slots = [0, 1, 2].map(() => ({
    address: memory.take(POWER_TABLE_LENGTH * 4),
    gamma: undefined as number | undefined,
  }))
  memory.settle()
  const address = (gamma: number, wanted: Triple): number => {
    const held = slots.find((slot) => Object.is(slot.gamma, gamma))
    if (held) return held.address
    const free = slots.find(({ gamma: old }) => !wanted.some((value) => Object.is(value, old)))
    if (!free) throw new Error('Bug: three gammas do not fit three tables')
    fillPowerTable(
      new Float32Array(module.memory.buffer, free.address, POWER_TABLE_LENGTH),
      1 / gamma,
    )
    free.gamma = gamma
    return free.address
  }
  return {
    addresses: (gamma) => [
      address(gamma[0], gamma),
      address(gamma[1], gamma),
      address(gamma[2], gamma),
    ],
  }
}
