import { alikeCues, selectAlike } from '../../store/looks.ts'
import { tell } from '../../store/notices.ts'
import { pickReading } from '../../store/picking.ts'
import { keepProposal, leaveProposal, togglePicking } from '../../store/proposal.ts'
import { cueIndex, cuesOf, currentCue, jobOf } from '../../store/queries.ts'
import { setOpened, setSheet, setStep } from '../../store/session.ts'
import type { AppState } from '../../store/state.ts'
import type { App } from '../appContext.ts'
import type { MatchReference } from '../solvers.ts'
import type { Command } from './command.ts'

const canSolve = (state: AppState): boolean =>
  state.media === 'ready' && state.step === 'rehearse' && currentCue(state) !== undefined

const neighbour = (state: AppState, by: 1 | -1) => {
  const cue = currentCue(state)
  const cues = cuesOf(state)
  return cue && cues[cueIndex(cues, cue) + by]
}

/** The held frame or still that the picture is compared with. */
const heldCompared = (state: AppState): MatchReference | undefined => {
  const { against, stills } = state.view
  if (against.kind !== 'held') return undefined
  const { id } = against
  const known = jobOf(state)?.held[id] ?? stills.find((still) => still.id === id)
  return known && { kind: 'held', id, name: known.name }
}

const matchNeighbour = ({ store, services }: App, by: 1 | -1): void => {
  const other = neighbour(store.getState(), by)
  if (other) services.solve.matchTo({ kind: 'cue', id: other.id })
}

export const SOLVE_COMMANDS: readonly Command[] = [
  {
    id: 'bring-inside',
    label: 'Bring inside by the smallest change',
    group: 'Grade',
    isPossible: canSolve,
    run: ({ services }) => services.solve.bringInside(),
  },
  {
    id: 'neutral-here',
    label: 'Neutral here: pick places that should be grey',
    group: 'Grade',
    isPossible: canSolve,
    run: ({ store }) => togglePicking(store, 'neutral'),
  },
  {
    id: 'pick-reading',
    label: 'Pick the place that is read',
    group: 'Grade',
    isPossible: ({ pointing }) => pointing.mode !== 'read' && pointing.reading !== undefined,
    run: ({ store }) => pickReading(store),
  },
  {
    id: 'match-to',
    label: 'Match to… a cue, a held frame or a still',
    group: 'Grade',
    isPossible: canSolve,
    run: ({ store }) => {
      setSheet(store, 'grade')
      setOpened(store, 'match-to')
    },
  },
  {
    id: 'match-previous',
    label: 'Match to the previous cue',
    group: 'Grade',
    isPossible: (state) => canSolve(state) && neighbour(state, -1) !== undefined,
    run: (app) => matchNeighbour(app, -1),
  },
  {
    id: 'match-next',
    label: 'Match to the next cue',
    group: 'Grade',
    isPossible: (state) => canSolve(state) && neighbour(state, 1) !== undefined,
    run: (app) => matchNeighbour(app, 1),
  },
  {
    id: 'match-alike',
    label: 'Match to the cue that looks most alike',
    group: 'Grade',
    isPossible: (state) => canSolve(state) && state.looks.version > 0,
    run: ({ store, services }) => {
      const { nearest } = alikeCues(store.getState())
      if (nearest) services.solve.matchTo({ kind: 'cue', id: nearest.cue.id })
      else tell(store, 'The colours of the cues are still being counted.')
    },
  },
  {
    id: 'match-held',
    label: 'Match to the held frame that is compared with',
    group: 'Grade',
    isPossible: (state) => canSolve(state) && heldCompared(state) !== undefined,
    run: ({ store, services }) => {
      const reference = heldCompared(store.getState())
      if (reference) services.solve.matchTo(reference)
    },
  },
  {
    id: 'restore-dye',
    label: 'Restore dye from places that should be grey',
    group: 'Grade',
    isPossible: ({ media }) => media === 'ready',
    run: ({ store }) => {
      setStep(store, 'prepare')
      togglePicking(store, 'dye')
    },
  },
  {
    id: 'keep-proposal',
    label: 'Keep the change that is shown',
    group: 'Grade',
    isPossible: ({ proposal }) => proposal !== undefined && proposal.change.kind !== 'none',
    run: ({ store }) => keepProposal(store),
  },
  {
    id: 'leave-proposal',
    label: 'Leave the change that is shown, or end picking',
    group: 'Grade',
    isPossible: ({ proposal, pointing }) => proposal !== undefined || pointing.mode !== 'read',
    run: ({ store }) => leaveProposal(store),
  },
  {
    id: 'select-alike',
    label: 'Select all cues that look like this one',
    group: 'Cues',
    isPossible: (state) => currentCue(state) !== undefined && state.looks.version > 0,
    run: ({ store }) => {
      const found = selectAlike(store)
      const { unknown } = alikeCues(store.getState())
      const rest = unknown > 0 ? ` The colours of ${unknown} are still to be counted.` : ''
      tell(store, `${found} ${found === 1 ? 'cue looks' : 'cues look'} like this one.${rest}`)
    },
  },
]
