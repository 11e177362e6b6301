import { at } from '../base/assert.ts'
import { displayedRgbToLab } from '../colour/cieLab.ts'
import { chromaToCode, signalToCode } from '../colour/codeValues.ts'
import { deltaE2000 } from '../colour/deltaE2000.ts'
import { type Grade, gradeColour } from '../colour/grade.ts'
import type { Triple } from '../colour/triple.ts'
import { rgbToYCbCr } from '../colour/yCbCr.ts'
import { decodeWindow } from './decodeWindow.ts'
import type { PixelWindow } from './framing.ts'
import type { Coding, MatrixName, Planes } from './planes.ts'

/** Pixels along each side of the square that a point reading is the mean of. */
export type PointSize = 1 | 5

/** A scan and the grade that a point of it is read through. */
export type PointSource = {
  readonly planes: Planes
  readonly coding: Coding
  readonly grade: Grade
}

/** A level, or a colour difference, and its narrow-range 10-bit code. */
export type PointFigure = {
  readonly value: number
  readonly code: number
  /** Where the value lies past the codes 0…1023: below (−1), above (1) or not (0). */
  readonly past: -1 | 0 | 1
}

/** R′, G′, B′, Y′ (0 black, 1 peak) and Cb, Cr (−0.5…0.5), unclipped, with their codes. */
export type PointFigures = Readonly<Record<'r' | 'g' | 'b' | 'y' | 'cb' | 'cr', PointFigure>>

/** The pixel that holds a place on the scan: 0…1 across and down. */
export const pixelAt = (
  { width, height }: Planes,
  place: { readonly x: number; readonly y: number },
): { readonly x: number; readonly y: number } => ({
  x: Math.min(width - 1, Math.max(0, Math.floor(place.x * width))),
  y: Math.min(height - 1, Math.max(0, Math.floor(place.y * height))),
})

/** The square of `size` pixels about the place, as much of it as lies on the scan. */
const windowAt = (
  planes: Planes,
  place: { readonly x: number; readonly y: number },
  size: PointSize,
): PixelWindow => {
  const { x, y } = pixelAt(planes, place)
  const reach = (size - 1) / 2
  return {
    left: Math.max(0, x - reach),
    right: Math.min(planes.width, x + reach + 1),
    top: Math.max(0, y - reach),
    bottom: Math.min(planes.height, y + reach + 1),
  }
}

/**
 * The R′G′B′ at a place on the scan (0…1 across and down), unclipped: the mean of the graded pixels
 * of a square of `size` pixels about it. Decoded, based and graded by the reference stages.
 */
export const pointColour = (
  { planes, coding, grade }: PointSource,
  place: { readonly x: number; readonly y: number },
  size: PointSize,
): Triple => {
  const picture = decodeWindow(planes, coding, windowAt(planes, place, size))
  const sum = [0, 0, 0] as [number, number, number]
  const count = picture.r.length
  for (let i = 0; i < count; i++) {
    const [r, g, b] = gradeColour([at(picture.r, i), at(picture.g, i), at(picture.b, i)], grade)
    sum[0] += r
    sum[1] += g
    sum[2] += b
  }
  return [sum[0] / count, sum[1] / count, sum[2] / count]
}

const pastOf = (exact: number): -1 | 0 | 1 => (exact < -0.5 ? -1 : exact >= 1023.5 ? 1 : 0)

/** Codes: 64 + 876·E for R′, G′, B′, Y′ and 512 + 896·E for Cb, Cr (BT.709-6 §4.6). */
const levelFigure = (value: number): PointFigure => ({
  value,
  code: signalToCode(value, 10, 'narrow'),
  past: pastOf(64 + 876 * value),
})

const chromaFigure = (value: number): PointFigure => ({
  value,
  code: chromaToCode(value, 10, 'narrow'),
  past: pastOf(512 + 896 * value),
})

/** What a colour measures: its R′G′B′ and its Y′CbCr by `matrix`. */
export const pointFigures = (colour: Triple, matrix: MatrixName): PointFigures => {
  const [r, g, b] = colour
  const [y, cb, cr] = rgbToYCbCr(colour, matrix)
  return {
    r: levelFigure(r),
    g: levelFigure(g),
    b: levelFigure(b),
    y: levelFigure(y),
    cb: chromaFigure(cb),
    cr: chromaFigure(cr),
  }
}

/** ΔE00 (CIE 142-2001) between two R′G′B′ as a BT.1886 display of BT.709 primaries shows them. */
export const pointDifference = (a: Triple, b: Triple): number =>
  deltaE2000(displayedRgbToLab(a), displayedRgbToLab(b))
