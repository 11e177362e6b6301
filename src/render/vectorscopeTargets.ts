import type { Triple } from '../core/colour/triple.ts'
import { rgbToYCbCr } from '../core/colour/yCbCr.ts'
import type { MatrixName } from '../core/picture/planes.ts'

/** A colour of the bars and where it lies on the plane of Cb and Cr (each ±0.5). */
export type VectorscopeTarget = {
  readonly name: string
  readonly cb: number
  readonly cr: number
}

const COLOURS: readonly { readonly name: string; readonly rgb: Triple }[] = [
  { name: 'R', rgb: [1, 0, 0] },
  { name: 'Mg', rgb: [1, 0, 1] },
  { name: 'B', rgb: [0, 0, 1] },
  { name: 'Cy', rgb: [0, 1, 1] },
  { name: 'G', rgb: [0, 1, 0] },
  { name: 'Yl', rgb: [1, 1, 0] },
]

/** Where the six colours of bars of an amplitude (0.75 or 1) lie for a luma equation. */
export const vectorscopeTargets = (
  matrix: MatrixName,
  amplitude: number,
): readonly VectorscopeTarget[] =>
  COLOURS.map(({ name, rgb: [r, g, b] }) => {
    const [, cb, cr] = rgbToYCbCr([r * amplitude, g * amplitude, b * amplitude], matrix)
    return { name, cb, cr }
  })
