import { unsaidOf } from '../../store/agreeRows.ts'
import { sayHere } from '../../store/answering.ts'
import { cuesOf } from '../../store/queries.ts'
import { setStep } from '../../store/session.ts'
import type { AppState } from '../../store/state.ts'
import type { Command } from './command.ts'

const hasJob = (state: AppState): boolean => state.history !== undefined

const left = (state: AppState) =>
  unsaidOf(
    state,
    cuesOf(state).map(({ id }) => id),
  )

/** The agreement of the reel by name. */
export const AGREE_COMMANDS: readonly Command[] = [
  {
    id: 'agree',
    label: 'Agree',
    group: 'Agree',
    isPossible: hasJob,
    run: ({ store }) => setStep(store, 'agree'),
  },
  {
    id: 'agree-rest',
    label: 'All cues that are open or changed since are agreed',
    group: 'Agree',
    isPossible: (state) => hasJob(state) && left(state).length > 0,
    run: ({ store }) => sayHere(store, left(store.getState()), 'agreed'),
  },
  {
    id: 'open-answers',
    label: 'Open answers of review packs…',
    group: 'Agree',
    isPossible: hasJob,
    run: ({ store, services }) => {
      setStep(store, 'agree')
      void services.review.pickAnswers()
    },
  },
  {
    id: 'make-pack',
    label: 'Make a review pack of the whole reel…',
    group: 'Agree',
    isPossible: ({ media, agreeing }) => media === 'ready' && agreeing.making === undefined,
    run: ({ store, services }) => {
      setStep(store, 'agree')
      const cues = cuesOf(store.getState()).map(({ id }) => id)
      void services.review.make({ cues, madeFor: '', hasStills: false, clipSeconds: 0 })
    },
  },
]
