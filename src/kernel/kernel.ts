import type { Grade } from '../core/colour/grade.ts'
import type { Framing } from '../core/picture/framing.ts'
import type { Coding, MatrixName, Planes } from '../core/picture/planes.ts'
import type { PictureLevels } from '../core/tolerance/pictureLevels.ts'
import type { ToleranceProfile } from '../core/tolerance/profile.ts'

/** One frame as the file holds it, and how it is to be delivered. */
export type KernelInput = {
  readonly planes: Planes
  readonly coding: Coding
  readonly grade: Grade
  readonly framing: Framing
}

/** Narrow-range 10-bit Y′CbCr 4:4:4 codes, 0…1023, row by row. */
export type CodePicture = {
  readonly width: number
  readonly height: number
  readonly y: Uint16Array
  readonly cb: Uint16Array
  readonly cr: Uint16Array
}

/**
 * The stages of `core/picture` and `core/tolerance` in f32 by WebAssembly SIMD. One kernel has one
 * memory: its calls are synchronous, and nothing of a call's input or result stays in it.
 *
 * Against the float64 reference: codes within 1; levels within a few 1e-7 and what the power stage
 * adds, 1e-6·|p·(p − 1)| of the level, p = 1/gamma. Where a channel's level before the power stage
 * cancels to within 1e-7 of black but not to black itself, a gamma above 1 magnifies what f32
 * rounds off (gamma 2.4: to about one code). Levels before it above 2^16 are not met.
 */
export type Kernel = {
  /**
   * The delivered picture as codes of `matrix`: `encodePicture(deliverPicture(…), matrix, 10)`.
   * Written into `into` and that returned if it has the size; otherwise into new arrays.
   */
  deliverCodes(input: KernelInput, matrix: MatrixName, into?: CodePicture): CodePicture
  /** `pictureLevels(deliverPicture(…), matrix, profile)`. */
  measureLevels(input: KernelInput, matrix: MatrixName, profile: ToleranceProfile): PictureLevels
  /**
   * Luma waveform: how many pixels of each of `columns` equal parts of the width have each level,
   * four 10-bit codes to a level: counts[column·256 + (code >> 2)]. `into` is overwritten if it
   * has columns·256 counts.
   */
  lumaWaveform(codes: CodePicture, columns: number, into?: Uint32Array): Uint32Array
  /**
   * Vectorscope: how many pixels have each pair of colour differences, size×size, Cb left to
   * right, Cr upwards: counts[(size − 1 − ⌊Cr·size/1024⌋)·size + ⌊Cb·size/1024⌋]. `into` is
   * overwritten if it has size·size counts.
   */
  vectorscope(codes: CodePicture, size: number, into?: Uint32Array): Uint32Array
}
