import type { Grade } from '../core/colour/grade.ts'
import { setFraming } from '../core/job/commands/setFraming.ts'
import { setGrade } from '../core/job/commands/setGrade.ts'
import { trimFraming } from '../core/job/commands/trimFraming.ts'
import { trimGrade } from '../core/job/commands/trimGrade.ts'
import type { Framing } from '../core/picture/framing.ts'
import type { AppStore } from './appStore.ts'
import { perform } from './document.ts'
import { currentCue } from './queries.ts'
import { editedCues } from './selection.ts'

/**
 * Changes the grade of the cue under the line and of those selected with it: all to the same
 * numbers, or, while trimming, each by what the first changes by. Every control that grades goes
 * through here. Returns whether it was done.
 */
export const changeGrade = (
  store: AppStore,
  label: string,
  edit: (grade: Grade) => Grade,
  gesture?: string,
): boolean => {
  const state = store.getState()
  const cue = currentCue(state)
  if (!cue) return false
  const ids = editedCues(store)
  const isTrim = ids.length > 1 && state.isTrimming
  store.setState({ proposal: undefined })
  return perform(
    store,
    (job) =>
      isTrim
        ? trimGrade(job, ids, cue.grade, edit(cue.grade), label)
        : setGrade(job, ids, edit, label),
    gesture,
  )
}

/** The same for framing. */
export const changeFraming = (
  store: AppStore,
  label: string,
  edit: (framing: Framing) => Framing,
  gesture?: string,
): boolean => {
  const state = store.getState()
  const cue = currentCue(state)
  if (!cue) return false
  const ids = editedCues(store)
  const isTrim = ids.length > 1 && state.isTrimming
  return perform(
    store,
    (job) =>
      isTrim
        ? trimFraming(job, ids, cue.framing, edit(cue.framing), label)
        : setFraming(job, ids, edit, label),
    gesture,
  )
}
