import { at } from '../base/assert.ts'
import { clamp01 } from '../colour/cdl.ts'
import { mapTriple, type Triple } from '../colour/triple.ts'
import { applyCubeStep } from './applyCubeStep.ts'
import { type LevelBox, valuesRange } from './levelBox.ts'
import type { CubeStep } from './processList.ts'

/** Cells of a cube that are looked at one by one; past that its whole range counts. */
const MOST_CELLS = 64

const AXES = [0, 1, 2] as const

/** The corners of a cell from its first, as red, green and blue steps. */
const CORNERS = [0, 1, 2, 3, 4, 5, 6, 7].map((i): Triple => [i >> 2, (i >> 1) & 1, i & 1])

/** The corners that edges along an axis begin at. */
const EDGES = AXES.map((axis) => CORNERS.filter((corner) => corner[axis] === 0))

/**
 * Where the colours of a box lie after a cube. In a cell both interpolations rise along an axis no
 * faster than its steepest edge there, and no slower than its flattest; and they stay between its
 * corners.
 */
export const boundCube = (step: CubeStep): ((box: LevelBox) => LevelBox) => {
  const { points, values } = step
  const last = points - 1
  const strides: Triple = [points * points * 3, points * 3, 3]
  const offsetOf = (corner: Triple): number =>
    corner[0] * strides[0] + corner[1] * strides[1] + corner[2] * strides[2]
  const corners = CORNERS.map(offsetOf)
  const edges = EDGES.map((starts) => starts.map(offsetOf))
  const ranges = AXES.map((c) => valuesRange(values, 3, c))
  const all: LevelBox = {
    low: mapTriple([0, 0, 0], (_, c) => at(ranges, c)[0]),
    high: mapTriple([0, 0, 0], (_, c) => at(ranges, c)[1]),
  }
  /** One channel in a cell, from its value at `from`, over `widths` parts of the cell. */
  const boundCell = (cell: number, from: number, widths: Triple, channel: number) => {
    let [low, high] = [from, from]
    for (const axis of AXES) {
      let [flattest, steepest] = [0, 0]
      for (const start of at(edges, axis)) {
        const edge = cell + start + channel
        const rise = at(values, edge + strides[axis]) - at(values, edge)
        flattest = Math.min(flattest, rise)
        steepest = Math.max(steepest, rise)
      }
      low += flattest * widths[axis]
      high += steepest * widths[axis]
    }
    let [least, most] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY]
    for (const corner of corners) {
      const value = at(values, cell + corner + channel)
      least = Math.min(least, value)
      most = Math.max(most, value)
    }
    return [Math.max(low, least), Math.min(high, most)] as const
  }
  return (box) => {
    const from = mapTriple(box.low, (level) => clamp01(level) * last)
    const to = mapTriple(box.high, (level) => clamp01(level) * last)
    const first = mapTriple(from, (place) => Math.min(Math.floor(place), last - 1))
    const end = mapTriple(to, (place, axis) => Math.max(Math.ceil(place), first[axis] + 1))
    const cells = (end[0] - first[0]) * (end[1] - first[1]) * (end[2] - first[2])
    if (cells > MOST_CELLS) return all
    const low = [Infinity, Infinity, Infinity] as [number, number, number]
    const high = [-Infinity, -Infinity, -Infinity] as [number, number, number]
    for (let r = first[0]; r < end[0]; r++)
      for (let g = first[1]; g < end[1]; g++)
        for (let b = first[2]; b < end[2]; b++) {
          const cell: Triple = [r, g, b]
          const corner = mapTriple(cell, (place, axis) => Math.max(place, from[axis]))
          const widths = mapTriple(cell, (place, axis) =>
            Math.max(0, Math.min(place + 1, to[axis]) - corner[axis]),
          )
          const value = applyCubeStep(
            mapTriple(corner, (place) => place / last),
            step,
          )
          for (const c of AXES) {
            const [least, most] = boundCell(offsetOf(cell), value[c], widths, c)
            low[c] = Math.min(low[c], least)
            high[c] = Math.max(high[c], most)
          }
        }
    return { low, high }
  }
}
