import type { FilmBase } from '../film/filmBase.ts'

/** How the three planes of a picture relate: Y′CbCr with its chroma subsampling, or R′G′B′. */
export type Layout = '420' | '422' | '444' | 'rgb'

export type Samples = Uint8Array | Uint16Array

/**
 * A picture as the file holds it: three tightly packed planes of code values, row by row.
 * Y′, Cb, Cr for the subsampled layouts, R′, G′, B′ for 'rgb'. 8-bit samples are Uint8Array,
 * deeper ones Uint16Array holding 0…2^depth−1. Chroma planes are ⌈width/2⌉ wide (420, 422) and
 * ⌈height/2⌉ high (420). Chroma is sited left horizontally and between lines vertically (420),
 * left (422): the default of ISO/IEC 14496-10 (H.264) Annex E, chroma_sample_loc_type 0.
 */
export type Planes = {
  readonly width: number
  readonly height: number
  readonly layout: Layout
  readonly depth: number
  readonly samples: readonly [Samples, Samples, Samples]
}

/** The luma equation a Y′CbCr picture was coded with. */
export type MatrixName = 'bt601' | 'bt709' | 'bt2020'

/** Narrow: black and peak at 16·2^(n−8) and 235·2^(n−8). Full: 0 and 2^n−1. */
export type RangeName = 'narrow' | 'full'

/**
 * What must be known to read code values as a picture: luma equation (no meaning for 'rgb'), range
 * of codes, the base that makes video of a scan of film (none: a print), and the shape of pixels.
 */
export type Coding = {
  readonly matrix: MatrixName
  readonly range: RangeName
  readonly base?: FilmBase
  /** Width of a pixel over its height, as the picture is shown; 1 where not stated. */
  readonly pixelAspect?: number
}

export const chromaWidth = (layout: Layout, width: number): number =>
  layout === '420' || layout === '422' ? (width + 1) >> 1 : width

export const chromaHeight = (layout: Layout, height: number): number =>
  layout === '420' ? (height + 1) >> 1 : height
