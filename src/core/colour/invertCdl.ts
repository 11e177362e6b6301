import { type Cdl, type CdlStyle, clamp01 } from './cdl.ts'
import { saturate } from './grade.ts'
import { mapTriple, type Triple } from './triple.ts'

/**
 * One colour back through an ASC CDL v1.2 correction: clamp, 1/saturation, clamp, ^(1/power),
 * (x − offset)/slope, clamp; the no-clamp style without clamps. The slope must be above 0 and the
 * saturation above 0: otherwise what was lost cannot come back, and the result is not finite.
 */
export const invertCdl = (rgb: Triple, cdl: Cdl, style: CdlStyle): Triple => {
  const clamp = style === 'clamp' ? clamp01 : (value: number) => value
  const unsaturated = saturate(mapTriple(rgb, clamp), 1 / cdl.saturation)
  return mapTriple(unsaturated, (value, c) => {
    const x = clamp(value)
    const v = x > 0 ? x ** (1 / cdl.power[c]) : x
    return clamp((v - cdl.offset[c]) / cdl.slope[c])
  })
}
