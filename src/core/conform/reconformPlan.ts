import type { Problem } from '../base/problem.ts'
import type { BoundaryFound, Cue, HeldFrame, Reel } from '../job/job.ts'
import type { Frame } from '../time/frame.ts'

/** Frames in a row of a new scan or cut that show what the old reel shows: new = old + shift. */
export type FoundStretch = {
  readonly from: number
  /** The first frame after it. */
  readonly to: number
  readonly shift: number
  /** How sure it is, 0 … 1. */
  readonly sure: number
  /** Its shift may be off by up to this many frames: its picture moves too little to tell. */
  readonly slack: number
  /** One sentence where it may be another picture; else ''. */
  readonly doubt: string
}

/** A cue's picture is found again, is found but may be another, or is not found. */
export type ReconformOutcome = 'follows' | 'doubtful' | 'lost'

/** What becomes of a cue on the new reel. */
export type ReconformRow = {
  /** The cue's number on the old reel, from 1. */
  readonly number: number
  readonly cue: Cue
  readonly outcome: ReconformOutcome
  /** Where it begins on the new reel; undefined where it is lost. */
  readonly first: Frame | undefined
  /** 0 … 1; 0 where it is lost. */
  readonly sure: number
  /** Frames of the cue, and how many of them are found where it goes. */
  readonly frames: number
  readonly found: number
  /** Remarks on it, in sentences; else ''. */
  readonly says: string
}

/** A cue that begins on the new reel beside those that follow. */
export type ReconformAdded = {
  readonly first: Frame
  /** The cue whose picture comes again here; undefined for a picture no cue had. */
  readonly again: Cue | undefined
  readonly ramp: number
  readonly boundary: BoundaryFound
}

/** How the cues of a reel follow its pictures to a new scan or cut of it. */
export type ReconformPlan = {
  /** What was followed: pictures that were looked for, or a list, which is sure of all it says. */
  readonly follows: 'pictures' | 'list'
  /** The reel as it was. */
  readonly reel: Reel
  /** Frames of the new reel. */
  readonly frames: number
  readonly rows: readonly ReconformRow[]
  readonly added: readonly ReconformAdded[]
  /** Held frames with where they are now; undefined where the frame is not there. */
  readonly held: readonly { readonly held: HeldFrame; readonly frame: Frame | undefined }[]
  readonly notTaken: readonly Problem[]
}
