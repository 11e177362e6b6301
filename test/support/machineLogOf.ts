import type { MachineEntry } from '../../src/core/lineup/machineLog.ts'

/** A line-up of a made-up machine on a day, its red gain and green level as given. */
export const machineLogEntry = (
  day: string,
  gain: number,
  green = 665,
  change: Partial<MachineEntry> = {},
): MachineEntry => ({
  ...{ machine: 'Orlop 2', gauge: '16mm', at: `${day}T08:00:00.000Z`, reason: '' },
  controls: [{ name: 'Red gain', unit: '', value: gain }],
  readings: [{ name: 'Green', unit: 'mV', aim: 665, low: 658, high: 672, value: green }],
  ...change,
})
