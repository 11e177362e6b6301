import type { Cue } from './job.ts'

/** A boundary below this confidence waits for a person to keep or drop it. */
const DOUBTFUL_BELOW = 0.75

export const isDoubtful = (cue: Cue): boolean => cue.boundary.confidence < DOUBTFUL_BELOW
