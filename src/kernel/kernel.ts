import type { CensusData, ColourTally } from '../core/census/censusData.ts'
import type { CensusReader } from '../core/census/censusVerdict.ts'
import type { Grade } from '../core/colour/grade.ts'
import type { CellMeans } from '../core/flashes/cellMeans.ts'
import type { Framing } from '../core/picture/framing.ts'
import type { Coding, MatrixName, Planes, RangeName } from '../core/picture/planes.ts'
import type { PictureLevels } from '../core/tolerance/pictureLevels.ts'
import type { ToleranceProfile } from '../core/tolerance/profile.ts'
import type { Delivered, DeliveredForm, Overlay } from '../core/transfer/deliveredForm.ts'
import type { Limiting } from '../core/transfer/transferSettings.ts'

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

/** How a transfer lays out a delivered picture, and what it does to it on the way. */
export type DeliverOptions = {
  readonly form: DeliveredForm
  /**
   * Brings levels inside the limits of a profile (`limitColour`), its Y′ by the luma equation of
   * the input's coding, as tolerance is measured; none where not given.
   */
  readonly limiter?: { readonly limiting: Limiting; readonly profile: ToleranceProfile }
  /** Laid over the framed picture, before the limiter. */
  readonly overlay?: Overlay
}

/** What is to be read of a picture besides its levels. */
export type PictureWants = {
  /** Columns of a luma waveform. */
  readonly waveformColumns?: number
  /** Columns of a waveform of each of R′, G′, B′. */
  readonly paradeColumns?: number
  readonly vectorscopeSize?: number
  readonly histograms?: boolean
}

/**
 * What was wanted of a picture. Waveforms and vectorscope are counted as `lumaWaveform` and
 * `vectorscope` are; a histogram has the pixels of 256 levels of four 10-bit codes each.
 */
export type PictureReading = {
  readonly levels: PictureLevels
  readonly waveform?: Uint32Array<ArrayBuffer>
  readonly parade?: readonly [r: Uint32Array, g: Uint32Array, b: Uint32Array]
  readonly vectorscope?: Uint32Array<ArrayBuffer>
  readonly histograms?: Readonly<Record<'r' | 'g' | 'b' | 'y', Uint32Array>>
}

/** Counts the colours of a cue's pictures, all of one kind, as they are measured. */
export type ColourCounter = {
  /** What was counted so far; undefined before the first picture. */
  readonly tally: () => ColourTally | undefined
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
  /** Whether the float64 reference does the work, as this host cannot run the kernel. */
  readonly isReference: boolean
  /**
   * The delivered picture as codes of `matrix`: `encodePicture(deliverPicture(…), matrix, 10)`.
   * Written into `into` and that returned if it has the size; otherwise into new arrays.
   */
  deliverCodes(input: KernelInput, matrix: MatrixName, into?: CodePicture): CodePicture
  /**
   * The delivered picture laid out for a file: `layDelivered` of `deliverPicture(…)` with its
   * overlay and limiter. `into` is written and given back as `bytes` if it has the size. Codes of
   * 8 and 10 bits within 1 of the reference; of 16 within 2, or what the kernel's levels allow
   * where a base's curves or a high gamma near black magnify their rounding. Pixels within that of
   * a threshold may be counted on its other side.
   */
  deliver(input: KernelInput, options: DeliverOptions, into?: Uint8Array<ArrayBuffer>): Delivered
  /**
   * `pictureLevels(deliverPicture(…), matrix, profile)`. `colours` counts the colours of the
   * scanned pixels that the picture is made from as it goes. `cells`, made for the picture's size,
   * are written with the means of the delivered picture, unfiltered.
   */
  measureLevels(
    input: KernelInput,
    matrix: MatrixName,
    profile: ToleranceProfile,
    colours?: ColourCounter,
    cells?: CellMeans,
  ): PictureLevels
  /** The same and what instruments show of the picture's 10-bit codes, in one pass over the data. */
  measurePicture(
    input: KernelInput,
    matrix: MatrixName,
    profile: ToleranceProfile,
    wants: PictureWants,
  ): PictureReading
  /**
   * Begins to count the colours of a cue, for pictures whose codes have the given range: at most
   * `most`; past that they are told apart less finely. It ends the counter begun before.
   */
  countColours(range: RangeName, most?: number): ColourCounter
  /**
   * `createCensusReader(census)`, the same verdicts sooner. The census last asked is held in the
   * kernel's memory until another call needs it.
   */
  censusReader(census: CensusData): CensusReader
  /**
   * Luma waveform: how many pixels of each of `columns` equal parts of the width have each level,
   * four 10-bit codes to a level: counts[column·256 + (code >> 2)]. `into` is overwritten if it
   * has columns·256 counts.
   */
  lumaWaveform(
    codes: CodePicture,
    columns: number,
    into?: Uint32Array<ArrayBuffer>,
  ): Uint32Array<ArrayBuffer>
  /**
   * Vectorscope: how many pixels have each pair of colour differences, size×size, Cb left to
   * right, Cr upwards: counts[(size − 1 − ⌊Cr·size/1024⌋)·size + ⌊Cb·size/1024⌋]. `into` is
   * overwritten if it has size·size counts.
   */
  vectorscope(
    codes: CodePicture,
    size: number,
    into?: Uint32Array<ArrayBuffer>,
  ): Uint32Array<ArrayBuffer>
}
