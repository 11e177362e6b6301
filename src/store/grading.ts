import type { Result } from '../core/base/result.ts'
import type { Grade } from '../core/colour/grade.ts'
import { setFraming } from '../core/job/commands/setFraming.ts'
import { setGrade } from '../core/job/commands/setGrade.ts'
import { trimFraming } from '../core/job/commands/trimFraming.ts'
import { trimGrade } from '../core/job/commands/trimGrade.ts'
import type { LabelledChange } from '../core/job/history.ts'
import type { Cue, Job } from '../core/job/job.ts'
import type { CueId } from '../core/job/recordIds.ts'
import type { Framing } from '../core/picture/framing.ts'
import type { AppStore } from './appStore.ts'
import { perform } from './document.ts'
import { editedCue, editedCues } from './selection.ts'

/** The cue that the gesture going on began on. */
const begunOn = new WeakMap<AppStore, { readonly gesture: string; readonly cue: CueId }>()

/** Whether a drag has come over a cut while it plays: it does no more, and stays where it began. */
const hasLeftItsCue = (store: AppStore, cue: Cue, gesture: string | undefined): boolean => {
  if (gesture === undefined) return false
  const begun = begunOn.get(store)
  if (begun?.gesture === gesture) return begun.cue !== cue.id
  begunOn.set(store, { gesture, cue: cue.id })
  return false
}

type Command = (
  job: Job,
  cue: Cue,
  ids: readonly CueId[],
  isTrim: boolean,
) => Result<LabelledChange>

const changeEdited = (store: AppStore, command: Command, gesture?: string): boolean => {
  const cue = editedCue(store)
  if (!cue || hasLeftItsCue(store, cue, gesture)) return false
  const ids = editedCues(store)
  const isTrim = ids.length > 1 && store.getState().isTrimming
  if (store.getState().proposal) store.setState({ proposal: undefined })
  return perform(store, (job) => command(job, cue, ids, isTrim), gesture)
}

/**
 * Changes the grade of the cue under the line and of those selected with it: all to the same
 * numbers, or, while trimming, each by what the first changes by. Every control that grades goes
 * through here. Changes of one `gesture` are one undo step, on the cue they began on. Returns
 * whether it was done.
 */
export const changeGrade = (
  store: AppStore,
  label: string,
  edit: (grade: Grade) => Grade,
  gesture?: string,
): boolean =>
  changeEdited(
    store,
    (job, { grade }, ids, isTrim) =>
      isTrim ? trimGrade(job, ids, grade, edit(grade), label) : setGrade(job, ids, edit, label),
    gesture,
  )

/** The same for framing. */
export const changeFraming = (
  store: AppStore,
  label: string,
  edit: (framing: Framing) => Framing,
  gesture?: string,
): boolean =>
  changeEdited(
    store,
    (job, { framing }, ids, isTrim) =>
      isTrim
        ? trimFraming(job, ids, framing, edit(framing), label)
        : setFraming(job, ids, edit, label),
    gesture,
  )
