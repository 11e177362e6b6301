import { type MachineEntry, type MachineLog, withEntry } from '../core/lineup/machineLog.ts'
import type { AppStore } from './appStore.ts'

/** Line-ups of the machines of this computer, and which of them is worked on. */
export type MachineHistory = {
  readonly log: MachineLog
  /** By the name people give it; empty: not said. */
  readonly machine: string
}

export const INITIAL_MACHINE_HISTORY: MachineHistory = { log: [], machine: '' }

export const setMachineHistory = (store: AppStore, change: Partial<MachineHistory>): void =>
  store.setState(({ machineHistory }) => ({ machineHistory: { ...machineHistory, ...change } }))

export const addToHistory = (store: AppStore, entry: MachineEntry): void =>
  setMachineHistory(store, { log: withEntry(store.getState().machineHistory.log, entry) })

/** A machine is lined up once at a time. */
const keyOf = ({ machine, gauge, at }: MachineEntry): string => `${at} ${gauge} ${machine}`

/** Puts another log beside the one there is; what both have is there once. */
export const joinHistory = (store: AppStore, other: MachineLog): void => {
  const { log } = store.getState().machineHistory
  const known = new Set(log.map(keyOf))
  const fresh = other.filter((each) => !known.has(keyOf(each)))
  setMachineHistory(store, { log: fresh.reduce(withEntry, log) })
}
