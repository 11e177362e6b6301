import type { Grade } from '../colour/grade.ts'
import { SMALLEST_GAMMA } from '../job/limits.ts'
import type { Framing } from '../picture/framing.ts'
import { type SurfaceNumberId, surfaceNumber } from './surfaceNumber.ts'

/** What numbers are to be, by their ids. */
export type WantedValues = ReadonlyMap<SurfaceNumberId, number>

/** A cue's numbers, as far as a control surface moves them. */
export type MovedValues = { readonly grade: Grade; readonly framing: Framing }

const canStand = ({ lift, gamma, gain }: Grade): boolean =>
  ([0, 1, 2] as const).every((c) => gain[c] >= lift[c] && gamma[c] >= SMALLEST_GAMMA)

/**
 * The grade with numbers as wanted. A number that would take gain below lift, or a gamma to 0,
 * stays as it was: a control held against an end stops there.
 */
export const moveGrade = (grade: Grade, wanted: WantedValues): Grade => {
  let moved = grade
  for (const [id, value] of wanted) {
    const number = surfaceNumber(id)
    if (number.of !== 'grade') continue
    const next = number.write(moved, value)
    if (canStand(next)) moved = next
  }
  return moved
}

/** The framing with numbers as wanted. */
export const moveFraming = (framing: Framing, wanted: WantedValues): Framing => {
  let moved = framing
  for (const [id, value] of wanted) {
    const number = surfaceNumber(id)
    if (number.of === 'framing') moved = number.write(moved, value)
  }
  return moved
}

export const readNumber = (id: SurfaceNumberId, { grade, framing }: MovedValues): number => {
  const number = surfaceNumber(id)
  return number.of === 'grade' ? number.read(grade) : number.read(framing)
}
