import { at } from '../base/assert.ts'
import { clamp01 } from '../colour/cdl.ts'
import { mapTriple, type Triple } from '../colour/triple.ts'
import type { CurveStep } from './processList.ts'

/**
 * A colour through a step's curve or its three curves: a straight line between the two places about
 * each level, the first and the last held past 0 and 1.
 */
export const applyCurveStep = (colour: Triple, { channels, points, values }: CurveStep): Triple =>
  mapTriple(colour, (level, channel) => {
    const along = clamp01(level) * (points - 1)
    const before = Math.min(Math.floor(along), points - 2)
    const part = along - before
    const from = channels === 3 ? before * 3 + channel : before
    return at(values, from) * (1 - part) + at(values, from + channels) * part
  })
