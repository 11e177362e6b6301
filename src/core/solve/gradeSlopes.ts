import { HIGHEST_LEVEL, SATURATION_WEIGHTS } from '../colour/grade.ts'
import { NUMBERS, PLACE } from './gradeVector.ts'

/** No slope of a channel by its numbers is taken for steeper: at black a power above 1 has no end. */
const STEEPEST = 20

/** A graded colour and how each of its channels moves with each number of the grade. */
type GradeSlopes = {
  /** Graded R′, G′, B′, unclipped. */
  readonly out: Float64Array
  /** Three rows of `NUMBERS`: of R′, G′, B′. */
  readonly slopes: Float64Array
}

export const gradeSlopes = (): GradeSlopes => ({
  out: new Float64Array(3),
  slopes: new Float64Array(3 * NUMBERS),
})

const [WR, WG, WB] = SATURATION_WEIGHTS

/** `gradeColour` of the colour that starts at `place`, in place: for loops over many colours. */
export const gradeInto = (
  out: Float64Array,
  colours: Float64Array,
  place: number,
  vector: Float64Array,
): void => {
  for (let c = 0; c < 3; c++) {
    const lift = vector[c] as number
    const v = lift + ((vector[PLACE.gain + c] as number) - lift) * (colours[place + c] as number)
    const gamma = vector[PLACE.gamma + c] as number
    out[c] = v > 0 && gamma !== 1 ? Math.min(v ** (1 / gamma), HIGHEST_LEVEL) : v
  }
  const [r, g, b] = [out[0] as number, out[1] as number, out[2] as number]
  const y = WR * r + WG * g + WB * b
  const saturation = vector[PLACE.saturation] as number
  out[0] = y + saturation * (r - y)
  out[1] = y + saturation * (g - y)
  out[2] = y + saturation * (b - y)
}

/** The same with the slopes. */
export const fillSlopes = (
  { out, slopes }: GradeSlopes,
  colours: Float64Array,
  place: number,
  vector: Float64Array,
): void => {
  const saturation = vector[PLACE.saturation] as number
  let luma = 0
  slopes.fill(0)
  for (let c = 0; c < 3; c++) {
    const x = colours[place + c] as number
    const lift = vector[c] as number
    const gamma = vector[PLACE.gamma + c] as number
    const v = lift + ((vector[PLACE.gain + c] as number) - lift) * x
    const u = v > 0 && gamma !== 1 ? Math.min(v ** (1 / gamma), HIGHEST_LEVEL) : v
    const steep = v > 0 ? Math.min(u / (v * gamma), STEEPEST) : 1
    const byGamma = v > 0 ? (-u * Math.log(v)) / (gamma * gamma) : 0
    const share = (1 - saturation) * (SATURATION_WEIGHTS[c as 0 | 1 | 2] as number)
    for (let row = 0; row < 3; row++) {
      const mixed = share + (row === c ? saturation : 0)
      const base = row * NUMBERS + c
      slopes[base] = mixed * steep * (1 - x)
      slopes[base + PLACE.gamma] = mixed * byGamma
      slopes[base + PLACE.gain] = mixed * steep * x
    }
    out[c] = u
    luma += (SATURATION_WEIGHTS[c as 0 | 1 | 2] as number) * u
  }
  for (let c = 0; c < 3; c++) {
    const off = (out[c] as number) - luma
    slopes[c * NUMBERS + PLACE.saturation] = off
    out[c] = luma + saturation * off
  }
}
