import type { Grade } from '../core/colour/grade.ts'
import type { Framing } from '../core/picture/framing.ts'
import type { Coding, Planes } from '../core/picture/planes.ts'
import type { PictureLevels } from '../core/tolerance/pictureLevels.ts'
import type { ToleranceProfile } from '../core/tolerance/profile.ts'
import type { PictureReading, PictureWants } from '../kernel/kernel.ts'

/** What the instruments are asked to show of the frame that was last set. */
export type InstrumentRequest = {
  readonly coding: Coding
  readonly grade: Grade
  readonly framing: Framing
  readonly profile: ToleranceProfile
  /** Which signal is shown: as it will be delivered, or the whole scan without a grade. */
  readonly signal: 'graded' | 'scanned'
  readonly wants: PictureWants
  /**
   * Whether every second pair of lines is enough, in half the time: while something is dragged.
   * Parts of the picture are then about right, and what only other lines hold is not seen.
   */
  readonly isCoarse: boolean
}

export type InstrumentReading = {
  readonly shown: Omit<PictureReading, 'levels'>
  /**
   * The unfiltered ends of the signal shown, where some of it lies past what 10-bit video can
   * carry: the codes 0…3 and 1020…1023, where the counts end, are reserved for timing reference
   * (BT.656-5 §2.4, from memory).
   */
  readonly past?: Pick<PictureLevels, 'r' | 'g' | 'b' | 'y'>
  /** Levels of the frame as it will be delivered, whichever signal is shown. */
  readonly levels: PictureLevels
}

/** What the instrument worker does: it measures one frame, as often as its grade changes. */
export type InstrumentCalls = {
  readonly setFrame: {
    readonly args: Planes
    readonly progress: never
    readonly answer: undefined
  }
  readonly measure: {
    readonly args: InstrumentRequest
    readonly progress: never
    readonly answer: InstrumentReading
  }
}
