import { joinCues } from '../../core/job/commands/joinCues.ts'
import { keepBoundary } from '../../core/job/commands/keepBoundary.ts'
import { moveBoundary } from '../../core/job/commands/moveBoundary.ts'
import { setRampShape } from '../../core/job/commands/setRampShape.ts'
import { isDoubtful } from '../../core/job/isDoubtful.ts'
import { frame } from '../../core/time/frame.ts'
import { DOUBTFUL } from '../../store/cueBits.ts'
import { endGesture, perform } from '../../store/document.ts'
import { nextCueWith } from '../../store/nextNeeding.ts'
import { cuesOf, currentCue } from '../../store/queries.ts'
import { editedCues } from '../../store/selection.ts'
import { standingOf } from '../../store/standing.ts'
import type { AppState } from '../../store/state.ts'
import type { App } from '../appContext.ts'
import type { Command } from './command.ts'

const canMove = (state: AppState): boolean => (currentCue(state)?.first ?? 0) > 0

const isOnDoubtful = (state: AppState): boolean => {
  const cue = currentCue(state)
  return cue !== undefined && isDoubtful(cue)
}

const goToNextDoubtful = ({ store, services }: App): void => {
  const state = store.getState()
  const cue = nextCueWith(state, DOUBTFUL)
  if (cue) services.seek(cue.first)
}

const move = ({ store, services }: App, frames: number): void => {
  const cue = currentCue(store.getState())
  if (!cue) return
  const first = frame(cue.first + frames)
  if (perform(store, (job) => moveBoundary(job, cue.id, first), `move ${cue.id}`))
    services.seek(first)
}

export const BOUNDARY_COMMANDS: readonly Command[] = [
  {
    id: 'find-shots',
    label: 'Find shots',
    group: 'Boundaries',
    isPossible: (state) => state.media === 'ready' && state.finding === undefined,
    run: ({ services }) => void services.findShots(),
  },
  {
    id: 'next-doubtful',
    label: 'Next doubtful boundary',
    group: 'Boundaries',
    isPossible: (state) => standingOf(state).doubtful > 0,
    run: goToNextDoubtful,
  },
  {
    id: 'keep',
    label: 'Keep this boundary and go to the next doubtful one',
    group: 'Boundaries',
    isPossible: isOnDoubtful,
    run: (app) => {
      const cue = currentCue(app.store.getState())
      if (!cue) return
      perform(app.store, (job) => keepBoundary(job, [cue.id]))
      goToNextDoubtful(app)
    },
  },
  {
    id: 'drop',
    label: 'Drop this boundary and go to the next doubtful one',
    group: 'Boundaries',
    isPossible: (state) => isOnDoubtful(state) && canMove(state),
    run: (app) => {
      const cue = currentCue(app.store.getState())
      if (!cue) return
      perform(app.store, (job) => joinCues(job, [cue.id], 'Drop boundary'))
      goToNextDoubtful(app)
    },
  },
  {
    id: 'boundary-back',
    label: 'Move the cue’s beginning one frame back',
    group: 'Boundaries',
    isPossible: canMove,
    run: (app) => move(app, -1),
  },
  {
    id: 'boundary-on',
    label: 'Move the cue’s beginning one frame on',
    group: 'Boundaries',
    isPossible: canMove,
    run: (app) => move(app, 1),
  },
  {
    id: 'ramp-shape',
    label: 'Ramp eased or linear',
    group: 'Boundaries',
    isPossible: (state) => (currentCue(state)?.ramp ?? 0) > 0,
    run: ({ store }) => {
      const shape = currentCue(store.getState())?.rampShape === 'eased' ? 'linear' : 'eased'
      perform(store, (job) => setRampShape(job, editedCues(store), shape))
    },
  },
  {
    id: 'boundary-here',
    label: 'Bring the next cue’s beginning to the line',
    group: 'Boundaries',
    isPossible: (state) => (cuesOf(state).at(-1)?.first ?? 0) > state.playhead,
    run: ({ store }) => {
      const state = store.getState()
      const next = cuesOf(state).find((cue) => cue.first > state.playhead)
      if (next) perform(store, (job) => moveBoundary(job, next.id, state.playhead))
      endGesture(store)
    },
  },
]
