import { applyChange, type Change, invertChange, isEmptyChange, squashChanges } from './change.ts'
import type { Job } from './job.ts'

/** A change with the words the screen shows for it. */
export type LabelledChange = { readonly label: string; readonly change: Change }

type Entry = LabelledChange & {
  /** Changes of one gesture (a drag, a run of nudges) carry one name and make one undo step. */
  readonly gesture?: string
}

/** The job with what was done to it and what was undone. */
export type History = {
  readonly job: Job
  readonly past: readonly Entry[]
  readonly future: readonly Entry[]
}

export const newHistory = (job: Job): History => ({ job, past: [], future: [] })

const PAST_LIMIT = 10_000

/**
 * The history after a change. With `gesture` equal to the last entry's, the two become one undo
 * step. A change that does nothing leaves the history as it is.
 */
export const record = (
  history: History,
  { label, change }: LabelledChange,
  gesture?: string,
): History => {
  if (isEmptyChange(change)) return history
  const job = applyChange(history.job, change)
  const last = history.past.at(-1)
  if (gesture !== undefined && last?.gesture === gesture && history.future.length === 0) {
    const entry = { label, change: squashChanges(last.change, change), gesture }
    const past = history.past.slice(0, -1)
    return { job, past: isEmptyChange(entry.change) ? past : [...past, entry], future: [] }
  }
  const entry = gesture === undefined ? { label, change } : { label, change, gesture }
  return { job, past: [...history.past.slice(-(PAST_LIMIT - 1)), entry], future: [] }
}

/** The history with its last entry closed, so that a gesture of the same name starts anew. */
export const endGesture = (history: History): History => {
  const last = history.past.at(-1)
  if (last?.gesture === undefined) return history
  const { label, change } = last
  return { ...history, past: [...history.past.slice(0, -1), { label, change }] }
}

export const undo = (history: History): History => {
  const entry = history.past.at(-1)
  if (!entry) return history
  return {
    job: applyChange(history.job, invertChange(entry.change)),
    past: history.past.slice(0, -1),
    future: [entry, ...history.future],
  }
}

export const redo = (history: History): History => {
  const [entry, ...future] = history.future
  if (!entry) return history
  return { job: applyChange(history.job, entry.change), past: [...history.past, entry], future }
}
