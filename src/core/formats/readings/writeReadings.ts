import type { Adjustment } from '../../lineup/adjustment.ts'

/** Controls, readings and what was tried as a file (docs/readings.md), in the order of the sheet. */
export const writeReadings = ({ controls, readings, log }: Adjustment): string => {
  const file = {
    format: 'reelwright-readings',
    version: 1,
    controls: controls.map(({ name, unit, low, high }) => ({ name, unit, low, high })),
    readings: readings.map(({ name, unit, aim, low, high }) => ({ name, unit, aim, low, high })),
    log,
  }
  return `${JSON.stringify(file, undefined, 2)}\n`
}
