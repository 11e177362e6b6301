import { expect, test } from 'vitest'
import { HIGHEST_LEVEL } from '../../src/core/colour/grade.ts'
import { fillPowerTable, POWER_TABLE_LENGTH } from '../../src/kernel/powerTable.ts'
import { between, seeded } from './randomPictures.ts'

const bits = new DataView(new ArrayBuffer(4))

/** A level through a table, in f32: the piece by its exponent and eight bits of its fraction. */
const power = (table: Float32Array, level: number): number => {
  bits.setFloat32(0, level)
  const piece = Math.max(-1, (bits.getInt32(0) >> 15) - ((127 - 40) << 8))
  const [intercept = 0, slope = 0] = table.subarray(2 * (piece + 1), 2 * (piece + 1) + 2)
  return Math.fround(intercept + Math.fround(slope * level))
}

test.each([0.1, 0.25, 0.4, 0.45, 0.8, 1.2, 2.2, 2.4, 4, 5])(
  'the table of gamma %d meets the power from 2^-40 to 2^16',
  (gamma) => {
    const random = seeded(gamma * 100)
    const exponent = 1 / gamma
    const table = new Float32Array(POWER_TABLE_LENGTH)
    fillPowerTable(table, exponent)
    // The chord's error of 256 pieces an octave, halved, and what f32 rounds off.
    const bound = (2 ** -20 * exponent * Math.abs(exponent - 1) + 2 ** -22 * (1 + exponent)) * 1.05
    let worst = 0
    for (let i = 0; i < 20_000; i++) {
      const level = Math.fround(2 ** between(random, Math.max(-40, -125 * gamma), 15.99))
      const wanted = level ** exponent
      if (wanted > HIGHEST_LEVEL) continue
      worst = Math.max(worst, Math.abs(power(table, level) / wanted - 1))
    }
    expect(worst).toBeLessThan(bound)
    expect(worst).toBeGreaterThan(0)
  },
)

test('levels at and below 0 pass every table unchanged', () => {
  const table = new Float32Array(POWER_TABLE_LENGTH)
  fillPowerTable(table, 1 / 2.4)
  for (const level of [0, -1e-6, -0.25, -40]) expect(power(table, level)).toBe(Math.fround(level))
})

test('the table of gamma 1 is the identity', () => {
  const table = new Float32Array(POWER_TABLE_LENGTH)
  fillPowerTable(table, 1)
  for (const level of [1e-9, 0.01, 0.3, 1, 1.09, 900])
    expect(power(table, level)).toBe(Math.fround(level))
})

test('no table goes past the highest level, and every piece is of numbers', () => {
  for (const gamma of [1e-6, 0.001, 0.02, 0.4, 1e6]) {
    const table = new Float32Array(POWER_TABLE_LENGTH)
    fillPowerTable(table, 1 / gamma)
    expect(table.every(Number.isFinite)).toBe(true)
    for (const level of [1e-9, 0.5, 0.99, 1.01, 2, 900, 65_000]) {
      const highest = Math.min(level ** (1 / gamma), HIGHEST_LEVEL)
      expect(power(table, level)).toBeGreaterThanOrEqual(0)
      expect(power(table, level)).toBeLessThanOrEqual(HIGHEST_LEVEL)
      if (highest === HIGHEST_LEVEL) expect(power(table, level)).toBe(HIGHEST_LEVEL)
    }
  }
})
