import { type Cdl, clamp01 } from '../colour/cdl.ts'
import { HIGHEST_LEVEL, saturate } from '../colour/grade.ts'
import { mapTriple, type Triple } from '../colour/triple.ts'
import type { CdlStep } from './processList.ts'

/** No further from black than `HIGHEST_LEVEL`; what is not a number becomes 0. */
export const heldLevel = (value: number): number =>
  value > -HIGHEST_LEVEL
    ? Math.min(value, HIGHEST_LEVEL)
    : value <= -HIGHEST_LEVEL
      ? -HIGHEST_LEVEL
      : 0

/** 1/value as far as levels go; what 0 took away cannot come back: 0. */
export const heldReciprocal = (value: number): number =>
  value > 0 ? Math.min(1 / value, HIGHEST_LEVEL) : 0

const powered = (value: number, power: number): number =>
  value > 0 ? Math.min(value ** power, HIGHEST_LEVEL) : value

type Hold = (value: number) => number

const forward = (colour: Triple, { slope, offset, power, saturation }: Cdl, hold: Hold): Triple => {
  const corrected = mapTriple(colour, (x, c) => powered(hold(x * slope[c] + offset[c]), power[c]))
  return mapTriple(saturate(corrected, saturation), hold)
}

const reverse = (colour: Triple, { slope, offset, power, saturation }: Cdl, hold: Hold): Triple => {
  const unsaturated = saturate(mapTriple(colour, hold), heldReciprocal(saturation))
  return mapTriple(unsaturated, (value, c) => {
    const v = powered(hold(value), heldReciprocal(power[c]))
    return hold((v - offset[c]) * heldReciprocal(slope[c]))
  })
}

/**
 * A colour through a correction by ASC CDL v1.2, forward or reverse, as `applyCdl` and `invertCdl`
 * have it but held within the highest level, so that it is finite whatever a job may hold. The
 * reverse of slope 0 is black in that channel, of saturation 0 the grey of the same luma.
 */
export const applyCdlStep = (colour: Triple, { cdl, style }: CdlStep): Triple => {
  const hold = style === 'forward' || style === 'reverse' ? clamp01 : heldLevel
  const isForward = style === 'forward' || style === 'forward-no-clamp'
  return isForward ? forward(colour, cdl, hold) : reverse(colour, cdl, hold)
}
