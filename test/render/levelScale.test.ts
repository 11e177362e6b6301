import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { signalToCode } from '../../src/core/colour/codeValues.ts'
import { type LevelUnit, levelInUnit } from '../../src/core/colour/levelUnits.ts'
import { EBU_R103_V3 } from '../../src/core/tolerance/profile.ts'
import { FIRST_LEVEL, LAST_LEVEL, levelEdge } from '../../src/render/levelCounts.ts'
import {
  HIGHEST_SHOWN,
  LOWEST_SHOWN,
  levelScale,
  levelTicks,
  tickText,
} from '../../src/render/levelScale.ts'
import { pastWords } from '../../src/render/pastWords.ts'
import bars from '../vectors/bars.json' with { type: 'json' }

const UNITS = ['percent', 'millivolts', 'code'] as const
const units = fc.constantFrom<LevelUnit>(...UNITS)

describe('units of levels', () => {
  it('put black and peak at 0 and 100 %, 0 and 700 mV, code 64 and 940', () => {
    const ends = UNITS.map((unit) => [levelInUnit(0, unit), levelInUnit(1, unit)])
    expect(ends).toEqual([
      [0, 100],
      [0, 700],
      [64, 940],
    ])
  })

  it.each(bars.rows)('write luma of $matrix $bar at $amplitude as published', (row) => {
    // The exact level of the row: its code is that, rounded.
    const level = row.lumaMv / 700
    expect(levelInUnit(level, 'millivolts')).toBeCloseTo(row.lumaMv, 9)
    expect(signalToCode(level, 10, 'narrow')).toBe(Math.round(levelInUnit(level, 'code')))
    expect(Math.abs(levelInUnit(level, 'code') - (row.code10[0] ?? 0))).toBeLessThan(0.5 + 0.08)
  })

  it('write the limits of EBU R 103 as its table does: 20…984, −5…105 %, −35…735 mV', () => {
    const texts = UNITS.map((unit) =>
      EBU_R103_V3.luma.map((limit) => tickText(levelInUnit(limit, unit), unit)),
    )
    expect(texts).toEqual([
      ['−5', '105'],
      ['−35', '735'],
      ['20', '984'],
    ])
  })
})

describe('a scale of levels', () => {
  it('holds −8 … 112 % from end to end in every unit', () => {
    fc.assert(
      fc.property(units, fc.integer({ min: 40, max: 900 }), (unit, length) => {
        const { place } = levelScale(unit, length, 0)
        expect(place(LOWEST_SHOWN)).toBeCloseTo(length, 9)
        expect(place(HIGHEST_SHOWN)).toBeCloseTo(0, 9)
        expect(place(0.52)).toBeCloseTo(length / 2, 9)
      }),
    )
  })

  it('has all levels that are drawn at their place, and no other', () => {
    expect(levelEdge(FIRST_LEVEL)).toBeGreaterThan(LOWEST_SHOWN)
    expect(levelEdge(LAST_LEVEL + 1)).toBeLessThan(HIGHEST_SHOWN)
    // Codes 0…3 and 1020…1023 are reserved: the levels at the ends hold just those.
    expect(levelInUnit(levelEdge(FIRST_LEVEL), 'code')).toBeCloseTo(3.5, 9)
    expect(levelInUnit(levelEdge(LAST_LEVEL + 1), 'code')).toBeCloseTo(1019.5, 9)
  })

  it('always numbers black and peak, and no two numbers where they would touch', () => {
    fc.assert(
      fc.property(units, fc.integer({ min: 90, max: 900 }), (unit, length) => {
        const levels = levelScale(unit, length, 0)
        const ticks = levelTicks(levels, 22)
        expect(ticks).toContain(levelInUnit(0, unit))
        expect(ticks).toContain(levelInUnit(1, unit))
        const places = ticks.map((tick) => levels.scale(tick))
        for (const [i, place] of places.entries()) {
          expect(place).toBeGreaterThanOrEqual(0)
          expect(place).toBeLessThanOrEqual(length)
          if (i > 0) expect((places[i - 1] ?? 0) - place).toBeGreaterThan(12)
        }
      }),
    )
  })
})

describe('signal past the edge', () => {
  const inside = { low: -0.02, high: 1.02 }
  const ends = { r: { low: -0.02, high: 1.31 }, g: inside, b: { low: -0.2, high: 1 }, y: inside }

  it('is told for the figures shown, by a sign and how far', () => {
    expect(pastWords(ends, ['r', 'g', 'b'], 'percent', 'above')).toBe('▲ R′ 131 %')
    expect(pastWords(ends, ['r', 'g', 'b'], 'millivolts', 'below')).toBe('▼ B′ −140 mV')
    expect(pastWords(ends, ['r', 'g', 'b'], 'code', 'above')).toBe('▲ R′ 1212')
  })

  it('is not told where none of them is past it', () => {
    expect(pastWords(ends, ['y'], 'percent', 'above')).toBe('')
    expect(pastWords(undefined, ['r'], 'percent', 'below')).toBe('')
  })
})
