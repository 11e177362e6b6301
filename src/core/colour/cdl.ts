import { problem } from '../base/problem.ts'
import { fail, ok, type Result } from '../base/result.ts'
import { type Grade, saturate } from './grade.ts'
import { mapTriple, type Triple } from './triple.ts'

/** An ASC CDL v1.2 correction. slope ≥ 0, power > 0, saturation ≥ 0, offset unbounded. */
export type Cdl = {
  readonly slope: Triple
  readonly offset: Triple
  readonly power: Triple
  readonly saturation: number
}

/** 'clamp' is the v1.2 order with its two clamps to 0…1; 'noclamp' leaves both out. */
export type CdlStyle = 'clamp' | 'noclamp'

/** slope = gain − lift, offset = lift, power = 1/gamma: the same function as the grade, no clamp. */
export const gradeToCdl = (grade: Grade): Cdl => ({
  slope: mapTriple(grade.gain, (gain, c) => gain - grade.lift[c]),
  offset: grade.lift,
  power: mapTriple(grade.gamma, (gamma) => 1 / gamma),
  saturation: grade.saturation,
})

/** gain = slope + offset, lift = offset, gamma = 1/power. */
export const cdlToGrade = (cdl: Cdl): Grade => ({
  lift: cdl.offset,
  gamma: mapTriple(cdl.power, (power) => 1 / power),
  gain: mapTriple(cdl.slope, (slope, c) => slope + cdl.offset[c]),
  saturation: cdl.saturation,
})

const CHANNELS = ['red', 'green', 'blue'] as const

/** Refuses values outside the ranges of ASC CDL v1.2, naming the field. */
export const checkCdl = (cdl: Cdl): Result<Cdl> => {
  const bad = (field: string, says: string) => fail(problem('out-of-range', says, { field }))
  for (const c of [0, 1, 2] as const) {
    const name = CHANNELS[c]
    const values = { slope: cdl.slope[c], offset: cdl.offset[c], power: cdl.power[c] }
    for (const [field, value] of Object.entries(values))
      if (!Number.isFinite(value))
        return bad(field, `The ${name} ${field} is not a finite number; give a plain decimal.`)
    if (values.slope < 0)
      return bad('slope', `The ${name} slope ${values.slope} is below 0; ASC CDL needs 0 or more.`)
    if (values.power <= 0)
      return bad(
        'power',
        `The ${name} power ${values.power} is not above 0; ASC CDL needs more than 0.`,
      )
  }
  if (!Number.isFinite(cdl.saturation) || cdl.saturation < 0)
    return bad('saturation', `The saturation ${cdl.saturation} must be a number of 0 or more.`)
  return ok(cdl)
}

/** Into 0…1; what is not a number becomes 0. */
export const clamp01 = (value: number): number => (value > 0 ? Math.min(value, 1) : 0)

/**
 * One colour through an ASC CDL v1.2 correction. R′G′B′ in and out, 0…1 nominal.
 * The no-clamp style passes a base below 0 through the power stage unchanged.
 */
export const applyCdl = (rgb: Triple, cdl: Cdl, style: CdlStyle): Triple => {
  const clamp = style === 'clamp' ? clamp01 : (value: number) => value
  const sop = mapTriple(rgb, (x, c) => {
    const v = clamp(x * cdl.slope[c] + cdl.offset[c])
    return v > 0 ? v ** cdl.power[c] : v
  })
  return mapTriple(saturate(sop, cdl.saturation), clamp)
}
