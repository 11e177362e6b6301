import type { Gauge } from '../time/footage.ts'
import type { Adjustment, Control, ReadingAim } from './adjustment.ts'

/** How a machine stood when a line-up of it ended. */
export type MachineEntry = {
  readonly machine: string
  readonly gauge: Gauge
  /** UTC, ISO 8601. */
  readonly at: string
  readonly controls: readonly (Pick<Control, 'name' | 'unit'> & { readonly value: number })[]
  readonly readings: readonly (Omit<ReadingAim, 'id'> & { readonly value: number })[]
  /** Why a reading was left outside its limits; empty where none is. */
  readonly reason: string
}

/** Line-ups of machines, the first first. */
export type MachineLog = readonly MachineEntry[]

/** Entries that are kept, at most: the first go. */
export const MOST_ENTRIES = 5000

/** How an adjustment ended, for the log of a machine; undefined where nothing was written down. */
export const machineEntry = (
  { controls, readings, log }: Adjustment,
  particulars: Pick<MachineEntry, 'machine' | 'gauge' | 'at' | 'reason'>,
): MachineEntry | undefined => {
  const last = log.at(-1)
  if (!last) return undefined
  return {
    ...particulars,
    controls: controls.map(({ name, unit }, j) => ({ name, unit, value: last.settings[j] ?? 0 })),
    readings: readings.map(({ id: _, ...reading }, i) => ({
      ...reading,
      value: last.values[i] ?? 0,
    })),
  }
}

/** A log with another entry, in its place by time. */
export const withEntry = (log: MachineLog, entry: MachineEntry): MachineLog =>
  [...log, entry]
    .toSorted((a, b) => (a.at === b.at ? 0 : a.at < b.at ? -1 : 1))
    .slice(-MOST_ENTRIES)

/** The line-ups of one machine with one gauge. */
export const entriesOf = (log: MachineLog, machine: string, gauge: Gauge): MachineLog =>
  log.filter((each) => each.machine === machine && each.gauge === gauge)

/** Machines that a log knows, by name. */
export const machinesOf = (log: MachineLog): readonly string[] =>
  [...new Set(log.map(({ machine }) => machine))].toSorted()

/** The last line-up of which every reading lay inside its limits. */
export const lastGood = (log: MachineLog): MachineEntry | undefined =>
  log.findLast(({ readings }) =>
    readings.every(({ value, low, high }) => value >= low && value <= high),
  )

/** One control or reading over time. */
export type MachineSeries = {
  readonly name: string
  readonly unit: string
  readonly isReading: boolean
  readonly points: readonly { readonly at: string; readonly value: number }[]
  /** Its limits as they were last; undefined for a control. */
  readonly limits: { readonly low: number; readonly high: number } | undefined
}

/** Every control and reading of some line-ups over time, readings first, by their names. */
export const seriesOf = (log: MachineLog): readonly MachineSeries[] => {
  const made = new Map<string, MachineSeries>()
  const put = (
    isReading: boolean,
    { name, unit, value }: { name: string; unit: string; value: number },
    at: string,
    limits?: MachineSeries['limits'],
  ): void => {
    const key = `${isReading} ${name}`
    const points = [...(made.get(key)?.points ?? []), { at, value }]
    made.set(key, { name, unit, isReading, points, limits })
  }
  for (const { at, readings, controls } of log) {
    for (const reading of readings) put(true, reading, at, { low: reading.low, high: reading.high })
    for (const control of controls) put(false, control, at)
  }
  return [...made.values()].toSorted((a, b) => Number(b.isReading) - Number(a.isReading))
}
