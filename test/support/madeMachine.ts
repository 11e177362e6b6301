import type { Adjustment, Control, ReadingAim } from '../../src/core/lineup/adjustment.ts'

/** A machine whose readings answer to its controls in a way that nobody sees. */
export type MadeMachine = {
  readonly controls: readonly Control[]
  readonly readings: readonly ReadingAim[]
  readonly begin: readonly number[]
  /** What is read with the controls set so; a little otherwise each time. */
  readonly read: (settings: readonly number[]) => readonly number[]
}

/** Chance in 0…1 from a seed (mulberry32, public domain). */
export const chanceOf = (seed: number): (() => number) => {
  let state = seed >>> 0
  return () => {
    state = (state + 0x6d2b79f5) >>> 0
    let t = Math.imul(state ^ (state >>> 15), state | 1)
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61)
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296
  }
}

/** Limits of a reading to each side of its aim, in parts of what one control does over its range. */
const TOLERANCE = 0.04
const NOISE = 0.1
const CURVE = 0.15

/**
 * A machine of 2 to 6 controls and as many readings or up to two more: every control moves every
 * reading, its own the most; responses bend; readings have noise of a tenth of their limits.
 * One that can be lined up is so somewhere within its hard limits.
 */
export const madeMachine = (seed: number, canBeLinedUp: boolean): MadeMachine => {
  const chance = chanceOf(seed)
  const spread = () => 2 * chance() - 1
  const n = 2 + Math.floor(chance() * 5)
  const m = n + Math.floor(chance() * 3)
  const controls = Array.from({ length: n }, (_, j) => {
    const low = Math.round(spread() * 50)
    return { id: `c${j}`, name: `control ${j + 1}`, unit: '', low, high: low + 10 + 90 * chance() }
  })
  const sizes = Array.from({ length: m }, () => 10 ** (spread() * 1.5))
  const response = Array.from({ length: m }, (_, i) =>
    Array.from({ length: n }, (__, j) => (i === j ? 0.8 + 0.4 * chance() : 0.5 * spread())),
  )
  const bends = Array.from({ length: m }, () => CURVE * spread())
  const part = (settings: readonly number[], j: number) => {
    const { low = 0, high = 1 } = controls[j] ?? {}
    return ((settings[j] ?? 0) - low) / (high - low)
  }
  const exact = (settings: readonly number[]) =>
    response.map((row, i) => {
      const line = row.reduce((sum, slope, j) => sum + slope * (part(settings, j) - 0.5), 0)
      return (sizes[i] ?? 1) * (line + (bends[i] ?? 0) * line * line)
    })
  const within = (edge: number) =>
    controls.map(({ low, high }) => low + (high - low) * (edge + (1 - 2 * edge) * chance()))
  const aims = exact(within(0.15))
  // What cannot be: one reading is wanted further off than all controls together can bring it.
  const far = canBeLinedUp ? -1 : Math.floor(chance() * m)
  const readings = aims.map((value, i) => {
    const size = sizes[i] ?? 1
    const reach = (response[i] ?? []).reduce((sum, slope) => sum + Math.abs(slope), 0)
    const aim = i === far ? value + size * reach * 1.5 : value
    const limit = size * TOLERANCE
    return {
      id: `r${i}`,
      name: `reading ${i + 1}`,
      unit: '',
      aim,
      low: aim - limit,
      high: aim + limit,
    }
  })
  const read = (settings: readonly number[]) =>
    exact(settings).map((value, i) => value + (sizes[i] ?? 1) * TOLERANCE * NOISE * spread())
  return { controls, readings, begin: within(0.1), read }
}

/** An adjustment of a machine that was read once, as it stands. */
export const begun = ({ controls, readings, begin, read }: MadeMachine): Adjustment => ({
  controls,
  readings,
  log: [{ settings: begin, values: read(begin) }],
})
