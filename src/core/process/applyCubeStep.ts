import { at } from '../base/assert.ts'
import { clamp01 } from '../colour/cdl.ts'
import { mapTriple, type Triple } from '../colour/triple.ts'
import type { CubeStep } from './processList.ts'

type Axis = 0 | 1 | 2

/** The three axes by the part of the way along them, the longest first. */
const byPart = ([r, g, b]: Triple): readonly [Axis, Axis, Axis] => {
  if (r >= g) return g >= b ? [0, 1, 2] : r >= b ? [0, 2, 1] : [2, 0, 1]
  return r >= b ? [1, 0, 2] : g >= b ? [1, 2, 0] : [2, 1, 0]
}

/**
 * A colour through a step's cube, held at the faces past 0…1. Trilinear: between the eight places
 * about it. Tetrahedral: from the place below it along the axis with the longest part first, then
 * the next, then the last, between those four places.
 */
export const applyCubeStep = (
  colour: Triple,
  { interpolation, points, values }: CubeStep,
): Triple => {
  const along = mapTriple(colour, (level) => clamp01(level) * (points - 1))
  const before = mapTriple(along, (place) => Math.min(Math.floor(place), points - 2))
  const part = mapTriple(along, (place, axis) => place - before[axis])
  const steps: Triple = [points * points * 3, points * 3, 3]
  const first = before[0] * steps[0] + before[1] * steps[1] + before[2] * steps[2]
  if (interpolation === 'tetrahedral') {
    const [a, b, c] = byPart(part)
    const second = first + steps[a]
    const third = second + steps[b]
    const last = third + steps[c]
    return mapTriple(
      part,
      (_, channel) =>
        at(values, first + channel) * (1 - part[a]) +
        at(values, second + channel) * (part[a] - part[b]) +
        at(values, third + channel) * (part[b] - part[c]) +
        at(values, last + channel) * part[c],
    )
  }
  const [r, g, b] = part
  return mapTriple(part, (_, channel) => {
    const alongBlue = (from: number): number =>
      at(values, from + channel) * (1 - b) + at(values, from + steps[2] + channel) * b
    const alongGreen = (from: number): number =>
      alongBlue(from) * (1 - g) + alongBlue(from + steps[1]) * g
    return alongGreen(first) * (1 - r) + alongGreen(first + steps[0]) * r
  })
}
