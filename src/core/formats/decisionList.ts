import type { Problem } from '../base/problem.ts'
import type { Cue, Foreign } from '../job/job.ts'
import type { Rate } from '../time/rate.ts'

/** The lists made elsewhere that can be read. */
export type ReadFormat = 'cdl' | 'edl' | 'otio' | 'csv'

/** How a decision takes over from the one before: on its frame, or over some frames. */
export type Transition = {
  readonly kind: 'cut' | 'dissolve' | 'wipe' | 'other'
  /** 0 for a cut. */
  readonly frames: number
}

/** A stretch of frames counted at the list's rate; `to` is the first after it. */
export type Span = { readonly from: number; readonly to: number }

/** What a cue can take of a decision; what the list does not state is left out. */
export type DecisionValues = Partial<
  Pick<
    Cue,
    | 'ramp'
    | 'rampShape'
    | 'boundary'
    | 'grade'
    | 'gradeName'
    | 'alternates'
    | 'framing'
    | 'scene'
    | 'note'
  >
>

/** One decision of a list made elsewhere, as much of it as a cue can take. */
export type Decision = {
  /** Of the clip, the event or the correction; '' where it has none. */
  readonly name: string
  /** Reel or file the picture comes from; '' where not stated. */
  readonly source: string
  /** Where its picture is on that source, and in the programme; undefined where not stated. */
  readonly sourceSpan: Span | undefined
  readonly recordSpan: Span | undefined
  readonly transition: Transition
  readonly values: DecisionValues
  /** Line of the file it begins on, from 1, where the format has lines. */
  readonly line: number | undefined
  /** What it says that a cue has no field for, to be kept. */
  readonly foreign: Foreign
}

/** A list made elsewhere, read. */
export type DecisionList = {
  readonly format: ReadFormat
  /** The list's own title; '' where it has none. */
  readonly title: string
  /** The rate its times were counted at; undefined where it has none. */
  readonly rate: Rate | undefined
  /** Whether its counts drop frames; left out where they do as the reel's do. */
  readonly isDropFrame?: boolean
  readonly decisions: readonly Decision[]
  /** What it says as a whole that a reel has no field for, to be kept. */
  readonly foreign: Foreign
  /** What could not be taken from it, each with its place. It was read all the same. */
  readonly notTaken: readonly Problem[]
}

/** How the reel counts time that a list is read for: what a list of labels leaves open. */
export type ListTiming = { readonly rate: Rate; readonly isDropFrame: boolean }
