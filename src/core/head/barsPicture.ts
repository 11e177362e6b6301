import type { Triple } from '../colour/triple.ts'
import type { Planes } from '../picture/planes.ts'
import { signalToCode16 } from './greyPicture.ts'

/** Full white, then colours of 75 %, in falling order of luma: 100-0-75-0 of ITU-R BT.801, from memory. */
const BARS: readonly Triple[] = [
  [1, 1, 1],
  [0.75, 0.75, 0],
  [0, 0.75, 0.75],
  [0, 0.75, 0],
  [0.75, 0, 0.75],
  [0.75, 0, 0],
  [0, 0, 0.75],
  [0, 0, 0],
]

/** Part of the height below the bars: black, with a patch of 2 % and one of 4 % above it. */
const FOOT = 1 / 6
const PATCHES: readonly (readonly [from: number, to: number, level: number])[] = [
  [3 / 8, 4 / 8, 0.02],
  [5 / 8, 6 / 8, 0.04],
]

/** Pixels over which one bar passes to the next, so that no edge rings: common practice. */
const EDGE = 4

/** How much of the next bar is seen `distance` pixels past an edge: half a wave. */
const passed = (distance: number): number => {
  const t = Math.min(1, Math.max(0, distance / EDGE + 0.5))
  return (1 - Math.cos(Math.PI * t)) / 2
}

const barsRow = (width: number): readonly [Float64Array, Float64Array, Float64Array] => {
  const rows = [0, 1, 2].map(() => new Float64Array(width))
  // On even columns, so that halved chroma has its edges where luma has.
  const edges = Array.from({ length: BARS.length + 1 }, (_, i) => 2 * Math.round((i * width) / 16))
  let bar = 0
  for (let x = 0; x < width; x++) {
    while (bar < BARS.length - 1 && x >= (edges[bar + 1] ?? width)) bar++
    const [before, here, after] = [BARS[bar - 1], BARS[bar], BARS[bar + 1]]
    const place = x + 0.5 - (edges[bar] ?? 0)
    const wide = (edges[bar + 1] ?? width) - (edges[bar] ?? 0)
    for (const [c, row] of rows.entries()) {
      const own = here?.[c] ?? 0
      const left = (before?.[c] ?? own) - own
      const right = (after?.[c] ?? own) - own
      row[x] = own + left * (1 - passed(place)) + right * passed(place - wide)
    }
  }
  return rows as unknown as readonly [Float64Array, Float64Array, Float64Array]
}

const footRow = (width: number): Float64Array => {
  const row = new Float64Array(width)
  for (const [from, to, level] of PATCHES)
    row.fill(level, Math.round(from * width), Math.round(to * width))
  return row
}

/**
 * Colour bars 100-0-75-0 with patches just above black below them, as full-range R′G′B′ of 16
 * bits. Nothing lies below black, as full-range codes hold nothing there.
 */
export const barsPicture = (width: number, height: number): Planes => {
  const bars = barsRow(width)
  const foot = footRow(width)
  const footFrom = Math.round(height * (1 - FOOT))
  const plane = (row: Float64Array): Uint16Array => {
    const codes = new Uint16Array(width * height)
    const upper = Uint16Array.from(row, signalToCode16)
    const lower = Uint16Array.from(foot, signalToCode16)
    for (let y = 0; y < height; y++) codes.set(y < footFrom ? upper : lower, y * width)
    return codes
  }
  const samples = [plane(bars[0]), plane(bars[1]), plane(bars[2])] as const
  return { width, height, layout: 'rgb', depth: 16, samples }
}
