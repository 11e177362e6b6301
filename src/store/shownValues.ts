import type { Grade } from '../core/colour/grade.ts'
import type { Cue } from '../core/job/job.ts'
import { type ValuesAt, valuesAt } from '../core/job/valuesAt.ts'
import type { Frame } from '../core/time/frame.ts'
import { shownGrade } from './proposal.ts'
import { cueAtFrame, cuesOf, previousCue } from './queries.ts'
import type { AppState } from './state.ts'

const withGrade = (cue: Cue, grade: Grade): Cue => (grade === cue.grade ? cue : { ...cue, grade })

/**
 * What a frame is shown with: what is in force on it, a grade that is proposed in place of a cue's
 * own. With `grade` its cue is shown with that one instead.
 */
export const shownValuesAt = (
  state: AppState,
  frame: Frame,
  grade?: Grade,
): ValuesAt | undefined => {
  const cue = cueAtFrame(state, frame)
  if (!cue) return undefined
  const previous = previousCue(cuesOf(state), cue)
  return valuesAt(
    withGrade(cue, grade ?? shownGrade(state, cue)),
    previous && withGrade(previous, shownGrade(state, previous)),
    frame,
  )
}
