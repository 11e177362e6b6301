import { expect, it } from 'vitest'
import { readReadings } from '../../../src/core/formats/readings/readReadings.ts'
import { writeReadings } from '../../../src/core/formats/readings/writeReadings.ts'
import { LINE_UP_SHEETS } from '../../../src/core/lineup/lineUpSheets.ts'
import { lineUpWords } from '../../../src/core/lineup/lineUpWords.ts'
import { solveAdjustment } from '../../../src/core/lineup/solveAdjustment.ts'

const [TUBE] = LINE_UP_SHEETS
if (!TUBE) throw new Error('no sheet')
const at = (values: readonly number[]) => ({
  ...{ controls: TUBE.controls, readings: TUBE.readings },
  log: [{ settings: [153.4, 48, 52.25], values }],
})

it('a line-up is logged with every number, and why a reading is left outside', () => {
  expect(lineUpWords(at([664, 1, -2]), 'Open gate', '')).toBe(
    'Open gate. Set: Beam current 153.4 µA, Red gain 48 %, Blue gain 52.25 %. Read: Green, open gate 664 mV, Red less green 1 mV, Blue less green −2 mV.',
  )
  expect(lineUpWords(at([664, 1, -9]), 'Open gate', ' Lamp is old. ')).toContain(
    'Blue less green −9 mV (outside −3 mV to 3 mV). Left outside its limits because: Lamp is old.',
  )
})

it('the sheets can be solved as they are, and the beam never goes above 250 µA', () => {
  for (const { controls, readings } of LINE_UP_SHEETS) {
    const settings = controls.map(({ low, high }) => (low + high) / 2)
    const values = readings.map(({ high }) => high + 1)
    const advice = solveAdjustment({ controls, readings, log: [{ settings, values }] })
    expect(advice.ok && advice.value.kind).toBe('exercise')
  }
  expect(TUBE.controls[0]).toMatchObject({ name: 'Beam current', high: 250 })
})

it('readings come back from their file as they were written', () => {
  const adjustment = at([664, 1, -9])
  expect(readReadings(writeReadings(adjustment))).toEqual({ ok: true, value: adjustment })
})
