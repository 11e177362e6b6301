import type { Grade } from '../core/colour/grade.ts'
import type { FilmBase } from '../core/film/filmBase.ts'
import { setGrade } from '../core/job/commands/setGrade.ts'
import { setReel } from '../core/job/commands/setReel.ts'
import type { Cue, Reel } from '../core/job/job.ts'
import type { CueId, ReelId } from '../core/job/recordIds.ts'
import type { AppStore } from './appStore.ts'
import { perform } from './document.ts'
import { INITIAL_POINTING, type PointingMode } from './pointing.ts'
import { currentCue } from './queries.ts'
import type { AppState } from './state.ts'

/** A change that is shown on the picture and the instruments, and waits to be kept or left. */
export type Proposal = {
  /** The name of what was asked, as it will stand in the history. */
  readonly label: string
  /** Plain sentences: what it changes and what that does. */
  readonly says: readonly string[]
  /** 'none' while it is looked for, and where nothing is to be changed or nothing can be. */
  readonly change:
    | { readonly kind: 'grade'; readonly cue: CueId; readonly grade: Grade }
    | { readonly kind: 'base'; readonly reel: ReelId; readonly base: FilmBase }
    | { readonly kind: 'none'; readonly isLooking: boolean }
}

/** The grade a cue is shown with: that of the proposal for it, or its own. */
export const shownGrade = ({ proposal }: AppState, cue: Cue): Grade =>
  proposal?.change.kind === 'grade' && proposal.change.cue === cue.id
    ? proposal.change.grade
    : cue.grade

/** The base a reel is shown with: that of the proposal for it, or its own. */
export const shownBase = ({ proposal }: AppState, reel: Reel): FilmBase =>
  proposal?.change.kind === 'base' && proposal.change.reel === reel.id
    ? proposal.change.base
    : reel.base

export const offerProposal = (store: AppStore, proposal: Proposal): void =>
  store.setState({ proposal })

/** Ends picking places: the next press on the picture reads it again. */
const endPicking = (store: AppStore): void => {
  const { pointing } = store.getState()
  if (pointing.mode !== 'read')
    store.setState({ pointing: { ...pointing, mode: INITIAL_POINTING.mode, picks: [] } })
}

/** Begins to pick places for something, or ends it where it goes on; what was shown is left. */
export const togglePicking = (store: AppStore, mode: Exclude<PointingMode, 'read'>): void => {
  const { pointing } = store.getState()
  if (pointing.mode === mode) {
    leaveProposal(store)
    return
  }
  store.setState({ pointing: { ...pointing, mode, picks: [] }, proposal: undefined })
}

/** Makes the change that is shown, as one step of the history. Returns whether it was done. */
export const keepProposal = (store: AppStore): boolean => {
  const { proposal } = store.getState()
  if (!proposal || proposal.change.kind === 'none') return false
  const { label, change } = proposal
  const isDone = perform(store, (job) => {
    if (change.kind === 'grade') return setGrade(job, [change.cue], () => change.grade, label)
    return setReel(job, change.reel, (reel) => ({ ...reel, base: change.base }), label)
  })
  if (isDone) leaveProposal(store)
  return isDone
}

/** Goes back to what the job says, and ends picking. */
export const leaveProposal = (store: AppStore): void => {
  if (store.getState().proposal) store.setState({ proposal: undefined })
  endPicking(store)
}

const isOfAnother = (state: AppState, before: AppState): boolean =>
  state.history?.job !== before.history?.job || state.reelId !== before.reelId

/**
 * Leaves a proposal as soon as the job is another (a change, an undo), and one for a cue when the
 * line leaves that cue, with the places picked in it. Returns how to stop.
 */
export const leaveWhenStale = (store: AppStore): (() => void) =>
  store.subscribe((state, before) => {
    const { pointing, proposal } = state
    if (!proposal && pointing.mode === 'read' && pointing.picks.length === 0) return
    const hasLeftCue = pointing.mode !== 'dye' && currentCue(state)?.id !== currentCue(before)?.id
    const hasLeftStep = state.step !== before.step
    if (!isOfAnother(state, before) && !hasLeftCue && !hasLeftStep) return
    store.setState({
      // A proposal that came with this very change is about the job as it is now.
      ...(proposal === before.proposal && { proposal: undefined }),
      pointing: { ...pointing, mode: hasLeftStep ? 'read' : pointing.mode, picks: [] },
    })
  })
