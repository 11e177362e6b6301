import type { MatrixName } from '../picture/planes.ts'
import { bt1886ToLinear } from './bt1886.ts'
import { applyMatrix3, IDENTITY_MATRIX3, type Matrix3 } from './matrix3.ts'
import {
  BT709_PRIMARIES,
  BT2020_PRIMARIES,
  DISPLAY_P3_PRIMARIES,
  primariesMatrix,
} from './primaries.ts'
import { linearToSrgb } from './srgb.ts'
import { mapTriple, type Triple } from './triple.ts'

/**
 * What is assumed of the display. The signal is made for BT.1886; 'srgb' and 'display-p3' turn it
 * into those spaces, 'as-coded' sends it as it is to a display set to BT.1886.
 */
export type DisplaySpace = 'srgb' | 'display-p3' | 'as-coded'

const MATRICES = {
  'as-coded': [IDENTITY_MATRIX3, IDENTITY_MATRIX3],
  srgb: [IDENTITY_MATRIX3, primariesMatrix(BT2020_PRIMARIES, BT709_PRIMARIES)],
  'display-p3': [
    primariesMatrix(BT709_PRIMARIES, DISPLAY_P3_PRIMARIES),
    primariesMatrix(BT2020_PRIMARIES, DISPLAY_P3_PRIMARIES),
  ],
} as const

/**
 * Linear light of a signal → of a display: a signal coded with the matrix of BT.2020 has the
 * primaries of BT.2020, any other those of BT.709 (for BT.601 common practice, no published source).
 */
export const displayMatrix = (matrix: MatrixName, space: DisplaySpace): Matrix3 =>
  MATRICES[space][matrix === 'bt2020' ? 1 : 0]

/**
 * Signal R′G′B′ → what a display is sent so that it shows what a BT.1886 display would with white 1
 * and black 0 (annex 1: gamma 2.4), in 0…1: what is outside is shown as the nearer end. Both
 * spaces have the transfer function of sRGB (IEC 61966-2-1; CSS Color 4 §10.6 for Display P3).
 */
export const displaySignal = (signal: Triple, matrix: MatrixName, space: DisplaySpace): Triple => {
  const kept = (value: number) => Math.min(1, Math.max(0, value))
  const shown = mapTriple(signal, kept)
  if (space === 'as-coded') return shown
  const light = mapTriple(shown, (value) => bt1886ToLinear(value, 1, 0))
  return mapTriple(applyMatrix3(displayMatrix(matrix, space), light), (value) =>
    linearToSrgb(kept(value)),
  )
}
