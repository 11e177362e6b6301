import type { Result } from '../core/base/result.ts'
import * as history from '../core/job/history.ts'
import type { Job } from '../core/job/job.ts'
import type { ReelId } from '../core/job/recordIds.ts'
import { frame } from '../core/time/frame.ts'
import type { AppStore } from './appStore.ts'
import { putNoticeAway, putRefusalAway, tellRefusal } from './notices.ts'
import { followPlayhead, pruneSelection } from './selection.ts'
import { INITIAL_STATE, keptBetweenJobs } from './state.ts'

/** Shows a job, new or opened, in place of the one before. */
export const showJob = (store: AppStore, job: Job, shelfKey: string): void => {
  const reelId = Object.keys(job.reels)[0] as ReelId | undefined
  store.setState({
    ...INITIAL_STATE,
    ...keptBetweenJobs(store.getState()),
    history: history.newHistory(job),
    shelfKey,
    reelId,
    media: 'missing',
    playhead: frame(0),
  })
  followPlayhead(store)
}

const replaceHistory = (store: AppStore, after: history.History): void => {
  if (after === store.getState().history) return
  store.setState({ history: after, saving: { ...store.getState().saving, state: 'unsaved' } })
  pruneSelection(store)
}

/**
 * Runs a job command and records its change; what it refuses is told to the person until a later
 * change is done. Changes with the same `gesture` make one undo step. Returns whether it was done.
 */
export const perform = (
  store: AppStore,
  command: (job: Job) => Result<history.LabelledChange>,
  gesture?: string,
): boolean => {
  const before = store.getState().history
  if (!before) return false
  const result = command(before.job)
  if (!result.ok) {
    tellRefusal(store, result.problems)
    return false
  }
  putRefusalAway(store)
  if (gesture !== store.getState().gesture) store.setState({ gesture })
  replaceHistory(store, history.record(before, result.value, gesture))
  return true
}

/** Closes a gesture, so that the next change is an undo step of its own. */
export const endGesture = (store: AppStore): void => {
  const { history: before } = store.getState()
  if (before) store.setState({ history: history.endGesture(before), gesture: undefined })
}

export const undo = (store: AppStore): void => {
  const { history: before } = store.getState()
  if (!before) return
  putNoticeAway(store)
  replaceHistory(store, history.undo(before))
}

export const redo = (store: AppStore): void => {
  const { history: before } = store.getState()
  if (!before) return
  putNoticeAway(store)
  replaceHistory(store, history.redo(before))
}
