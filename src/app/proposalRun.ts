import type { Problem } from '../core/base/problem.ts'
import type { AppStore } from '../store/appStore.ts'
import { offerProposal, type Proposal } from '../store/proposal.ts'
import { currentCue } from '../store/queries.ts'
import { sentenceOf } from '../store/state.ts'
import { isAbort, tellError } from './tellError.ts'

/** What was found: a change with its sentences, or sentences alone. */
export type Found = Pick<Proposal, 'says' | 'change'>

/** What says that nothing is changed, and why. */
export const nothingFound = (...says: string[]): Found => ({
  says,
  change: { kind: 'none', isLooking: false },
})

export const foundNone = (problems: readonly Problem[]): Found => nothingFound(sentenceOf(problems))

type Run = {
  /** The name of what is asked. */
  readonly label: string
  /** What is said meanwhile; where nothing is, what was shown before stays until this is found. */
  readonly meanwhile?: string
  readonly look: (signal: AbortSignal) => Promise<Found>
}

/**
 * Looks for one proposal at a time and offers it, unless meanwhile the job has changed, the line has
 * left the cue, something else was asked or the search was left.
 */
export const createProposalRun = (store: AppStore): ((run: Run) => Promise<void>) => {
  let running: AbortController | undefined
  return async ({ label, meanwhile, look }) => {
    running?.abort()
    const stop = new AbortController()
    running = stop
    const begun = store.getState()
    const told: Proposal | undefined =
      meanwhile === undefined
        ? begun.proposal
        : { label, says: [meanwhile], change: { kind: 'none', isLooking: true } }
    if (told && told !== begun.proposal) offerProposal(store, told)
    const cue = currentCue(begun)
    const isStale = (): boolean => {
      const now = store.getState()
      const isOther = now.history?.job !== begun.history?.job || currentCue(now) !== cue
      return isOther || now.proposal !== told || now.pointing.mode !== begun.pointing.mode
    }
    const unsubscribe = store.subscribe(() => {
      if (isStale()) stop.abort()
    })
    try {
      const found = await look(stop.signal)
      unsubscribe()
      if (!stop.signal.aborted) offerProposal(store, { label, ...found })
    } catch (error) {
      unsubscribe()
      if (isAbort(error) || stop.signal.aborted) return
      store.setState({ proposal: undefined })
      tellError(store, error)
    } finally {
      if (running === stop) running = undefined
    }
  }
}
