import { applyMatrix3 } from '../colour/matrix3.ts'
import { mapTriple, type Triple } from '../colour/triple.ts'
import { applyCdlStep, heldLevel } from './applyCdlStep.ts'
import { applyCubeStep } from './applyCubeStep.ts'
import { applyCurveStep } from './applyCurveStep.ts'
import type { ProcessList, ProcessStep, RangeStep } from './processList.ts'

/**
 * A range as a slope and an offset, then limits. With one end alone the slope is 1 (Common LUT
 * Format, Range: then from and to are the same).
 */
export const rangeLine = ({ low, high, clamps }: RangeStep) => {
  const slope = low && high ? (high[1] - low[1]) / (high[0] - low[0]) : 1
  const [from, to] = low ?? high ?? [0, 0]
  return {
    slope,
    offset: to - slope * from,
    least: clamps && low ? low[1] : Number.NEGATIVE_INFINITY,
    most: clamps && high ? high[1] : Number.POSITIVE_INFINITY,
  }
}

const applyRangeStep = (colour: Triple, step: RangeStep): Triple => {
  const { slope, offset, least, most } = rangeLine(step)
  return mapTriple(colour, (level) => Math.min(Math.max(level * slope + offset, least), most))
}

/** A colour through one step. */
export const applyProcessStep = (colour: Triple, step: ProcessStep): Triple => {
  switch (step.kind) {
    case 'cdl':
      return applyCdlStep(colour, step)
    case 'matrix':
      return mapTriple(applyMatrix3(step.rows, colour), (value, c) => value + step.offset[c])
    case 'range':
      return applyRangeStep(colour, step)
    case 'curve':
      return applyCurveStep(colour, step)
    case 'cube':
      return applyCubeStep(colour, step)
  }
}

/**
 * A colour through the steps of a list, one after another: signal in and out (0 black, 1 peak),
 * unclipped but for what a step clips. After each step no channel is further from black than
 * `HIGHEST_LEVEL`, so that a list that `checkProcessList` passes makes of a finite colour a finite
 * one.
 */
export const applyProcess = ({ steps }: ProcessList, colour: Triple): Triple =>
  steps.reduce<Triple>(
    (current, step) => mapTriple(applyProcessStep(current, step), heldLevel),
    colour,
  )
