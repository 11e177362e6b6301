import type { Adjustment, Control } from './adjustment.ts'

/** How readings answer to controls, as far as it was seen. */
export type Response = {
  /** A row a reading, a column a control: reading units over the control's whole range. */
  readonly slopes: readonly (readonly number[])[]
  /** How far each control was moved in all, in parts of its range; 0: never. */
  readonly moved: readonly number[]
}

/** A control's range; 1 where it has none. */
export const rangeOf = ({ low, high }: Control): number => high - low || 1

/**
 * The response that the log of an adjustment tells, one move after another: each corrects what was
 * known in the direction of the move alone, the least change that explains it (C. G. Broyden, “A class
 * of methods for solving nonlinear simultaneous equations”, Mathematics of Computation 19, 1965,
 * from memory). A move of one control gives its column as it is.
 */
export const responseOf = ({ controls, readings, log }: Adjustment): Response => {
  const slopes = readings.map(() => controls.map(() => 0))
  const moved = controls.map(() => 0)
  for (const [index, now] of log.entries()) {
    const before = log[index - 1]
    if (!before) continue
    const step = controls.map(
      (control, j) => ((now.settings[j] ?? 0) - (before.settings[j] ?? 0)) / rangeOf(control),
    )
    const square = step.reduce((sum, part) => sum + part * part, 0)
    if (square === 0) continue
    step.forEach((part, j) => {
      moved[j] = (moved[j] ?? 0) + Math.abs(part)
    })
    slopes.forEach((row, i) => {
      const told = row.reduce((sum, slope, j) => sum + slope * (step[j] ?? 0), 0)
      const error = (now.values[i] ?? 0) - (before.values[i] ?? 0) - told
      for (let j = 0; j < row.length; j++)
        row[j] = (row[j] ?? 0) + (error * (step[j] ?? 0)) / square
    })
  }
  return { slopes, moved }
}

/** Controls that move the readings almost alike: what one does the other can undo. */
export type AlikeControls = {
  readonly first: number
  readonly second: number
  readonly cosine: number
}

/** Above this two columns are almost one. */
const ALIKE = 0.985

/** Pairs of controls whose columns point the same way, or opposite ways, weighed by the limits. */
export const alikeControls = (
  { readings, controls }: Pick<Adjustment, 'readings' | 'controls'>,
  { slopes }: Response,
): readonly AlikeControls[] => {
  const weights = readings.map(({ low, high }) => 2 / (high - low || 1))
  const columns = controls.map((_, j) => slopes.map((row, i) => (row[j] ?? 0) * (weights[i] ?? 1)))
  const pairs: AlikeControls[] = []
  for (let first = 0; first < columns.length; first++)
    for (let second = first + 1; second < columns.length; second++) {
      const [a = [], b = []] = [columns[first], columns[second]]
      const lengths = Math.hypot(...a) * Math.hypot(...b)
      if (lengths === 0) continue
      const cosine = a.reduce((sum, value, i) => sum + value * (b[i] ?? 0), 0) / lengths
      if (Math.abs(cosine) > ALIKE) pairs.push({ first, second, cosine })
    }
  return pairs
}
