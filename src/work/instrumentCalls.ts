import type { Grade } from '../core/colour/grade.ts'
import type { Framing } from '../core/picture/framing.ts'
import type { Coding, Planes } from '../core/picture/planes.ts'
import type { PictureLevels } from '../core/tolerance/pictureLevels.ts'
import type { ToleranceProfile } from '../core/tolerance/profile.ts'

/** What the instruments are asked to show of the frame that was last set. */
export type InstrumentRequest = {
  readonly grade: Grade
  readonly framing: Framing
  readonly profile: ToleranceProfile
  readonly waveformColumns: number
  readonly vectorscopeSize: number
}

export type InstrumentReading = {
  /** Counts of 256 luma levels (10-bit code / 4) in each column. */
  readonly waveform: Uint32Array
  /** Counts over Cb (left to right) and Cr (top is positive), size×size. */
  readonly vectorscope: Uint32Array
  readonly levels: PictureLevels
}

/** What the instrument worker does: it measures one frame, as often as its grade changes. */
export type InstrumentCalls = {
  readonly setFrame: {
    readonly args: { readonly planes: Planes; readonly coding: Coding }
    readonly progress: never
    readonly answer: undefined
  }
  readonly measure: {
    readonly args: InstrumentRequest
    readonly progress: never
    readonly answer: InstrumentReading
  }
}
