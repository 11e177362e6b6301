import type { Problem } from '../core/base/problem.ts'
import type { Grade } from '../core/colour/grade.ts'
import { setGrade } from '../core/job/commands/setGrade.ts'
import { setReel } from '../core/job/commands/setReel.ts'
import { gradeOfProcess } from '../core/process/gradeOfProcess.ts'
import type { ProcessList } from '../core/process/processList.ts'
import type { AppStore } from './appStore.ts'
import { endGesture, perform } from './document.ts'
import { putNoticeAway, tell } from './notices.ts'
import { reelOf } from './queries.ts'
import { editedCues } from './selection.ts'

/** A process list that was read and waits to be given a place in the job. */
export type ProcessOffer = {
  /** The name of its file. */
  readonly name: string
  readonly list: ProcessList
  /** The grade it is, where it is nothing else. */
  readonly grade: Grade | undefined
  /** What of the file was not taken. */
  readonly notTaken: readonly Problem[]
}

/** Shows a process list with the places it can be given. */
export const offerProcess = (
  store: AppStore,
  name: string,
  list: ProcessList,
  notTaken: readonly Problem[],
): void => {
  if (!reelOf(store.getState())) return
  endGesture(store)
  putNoticeAway(store)
  store.setState({ processOffer: { name, list, grade: gradeOfProcess(list), notTaken } })
}

/** Puts the process list away and changes nothing. */
export const leaveProcess = (store: AppStore): void => store.setState({ processOffer: undefined })

/** Puts the process list after the base of the reel, as one step of the history. */
export const takeProcessAsBase = (store: AppStore): void => {
  const state = store.getState()
  const { processOffer } = state
  const reel = reelOf(state)
  if (!processOffer || !reel) return
  const { list, name } = processOffer
  const edit = (before: typeof reel) => ({ ...before, base: { ...before.base, list } })
  if (!perform(store, (job) => setReel(job, reel.id, edit, 'Base list'))) return
  leaveProcess(store)
  tell(store, `${name} is the base list of ${reel.name}. Undo takes it back.`)
}

/** Gives the selected cues the grade that the process list is, as one step of the history. */
export const takeProcessAsGrade = (store: AppStore): void => {
  const state = store.getState()
  const { grade, name } = state.processOffer ?? {}
  const ids = editedCues(store)
  if (!grade || ids.length === 0) return
  if (!perform(store, (job) => setGrade(job, ids, () => grade, 'Import grade'))) return
  leaveProcess(store)
  const cues = ids.length === 1 ? 'The cue has' : `${ids.length} cues have`
  tell(store, `${cues} the grade of ${name}. Undo takes it back.`)
}
