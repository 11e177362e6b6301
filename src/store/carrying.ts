import { type CarriedPart, carryValues } from '../core/job/commands/carryValues.ts'
import type { Cue } from '../core/job/job.ts'
import type { CueId } from '../core/job/recordIds.ts'
import type { AppStore } from './appStore.ts'
import { perform } from './document.ts'
import { tell } from './notices.ts'
import { cueIndex, cuesOf, currentCue, previousCue } from './queries.ts'
import { editedCues } from './selection.ts'

/** Chooses whether a part of a cue's values is carried along. */
export const setCarried = (store: AppStore, part: CarriedPart, isCarried: boolean): void => {
  const others = store.getState().carriedParts.filter((each) => each !== part)
  store.setState({ carriedParts: isCarried ? [...others, part] : others })
}

/** Copies the grade and framing of the cue under the line, to be pasted on others. */
export const copyValues = (store: AppStore): void => {
  const state = store.getState()
  const cue = currentCue(state)
  if (!cue) return
  store.setState({ clipboard: { grade: cue.grade, framing: cue.framing } })
  tell(store, `Copied the grade and framing of cue ${cueIndex(cuesOf(state), cue) + 1}.`)
}

/** Gives cues the chosen parts of some values, and says to how many. */
const carry = (
  store: AppStore,
  from: Pick<Cue, 'grade' | 'framing'>,
  to: readonly CueId[],
  label: string,
): void => {
  const { carriedParts } = store.getState()
  if (!perform(store, (job) => carryValues(job, to, from, carriedParts, label))) return
  tell(store, `${label}: ${to.length} ${to.length === 1 ? 'cue' : 'cues'}.`)
}

/** Pastes what was copied on the cues selected. */
export const pasteValues = (store: AppStore): void => {
  const { clipboard } = store.getState()
  if (clipboard) carry(store, clipboard, editedCues(store), 'Paste')
}

/** The cues that carrying on from the cue under the line would go to. */
export const carryTargets = (
  cues: readonly Cue[],
  cue: Cue,
  where: 'next' | 'scene',
): readonly CueId[] => {
  if (where === 'next') {
    const next = cues[cueIndex(cues, cue) + 1]
    return next ? [next.id] : []
  }
  if (cue.scene === '') return []
  return cues.filter(({ id, scene }) => scene === cue.scene && id !== cue.id).map(({ id }) => id)
}

/** Carries the values of the cue under the line to the next, or to the others of its scene. */
export const carryOn = (store: AppStore, where: 'next' | 'scene'): void => {
  const state = store.getState()
  const cue = currentCue(state)
  if (!cue) return
  const label = where === 'next' ? 'Carry to the next cue' : `Carry to scene ${cue.scene}`
  carry(store, cue, carryTargets(cuesOf(state), cue, where), label)
}

/** Takes the values of the cue before as the starting point of the cue under the line. */
export const carryFromPrevious = (store: AppStore): void => {
  const state = store.getState()
  const cue = currentCue(state)
  const previous = cue && previousCue(cuesOf(state), cue)
  if (cue && previous) carry(store, previous, [cue.id], 'Carry from the cue before')
}
