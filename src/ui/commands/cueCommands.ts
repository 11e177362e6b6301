import { IDENTITY_GRADE } from '../../core/colour/grade.ts'
import { joinCues } from '../../core/job/commands/joinCues.ts'
import { setFraming } from '../../core/job/commands/setFraming.ts'
import { setGrade } from '../../core/job/commands/setGrade.ts'
import { splitCue } from '../../core/job/commands/splitCue.ts'
import { newCueId } from '../../core/job/recordIds.ts'
import { IDENTITY_FRAMING } from '../../core/picture/framing.ts'
import { verdictOf } from '../../store/checkKey.ts'
import { perform } from '../../store/document.ts'
import { tell } from '../../store/notices.ts'
import { currentCue, nextCueWhere } from '../../store/queries.ts'
import { editedCues, selectAll } from '../../store/selection.ts'
import { standingOf } from '../../store/standing.ts'
import type { AppState } from '../../store/state.ts'
import type { Command } from './command.ts'

const hasCue = (state: AppState): boolean => currentCue(state) !== undefined

const canJoin = (state: AppState): boolean =>
  hasCue(state) && (currentCue(state)?.first !== 0 || state.selection.length > 1)

export const CUE_COMMANDS: readonly Command[] = [
  {
    id: 'split',
    label: 'Split the cue at the line',
    group: 'Cues',
    isPossible: (state) => hasCue(state) && currentCue(state)?.first !== state.playhead,
    run: ({ store }) => {
      const { reelId, playhead } = store.getState()
      if (reelId) perform(store, (job) => splitCue(job, reelId, playhead, newCueId()))
    },
  },
  {
    id: 'join',
    label: 'Join to the cue before',
    group: 'Cues',
    isPossible: canJoin,
    run: ({ store }) => {
      const ids = editedCues(store)
      const cues = store.getState().history?.job.cues ?? {}
      const joinable = ids.length > 1 ? ids.filter((id) => cues[id]?.first !== 0) : ids
      perform(store, (job) => joinCues(job, joinable))
    },
  },
  {
    id: 'select-all',
    label: 'Select all cues',
    group: 'Cues',
    isPossible: hasCue,
    run: ({ store }) => selectAll(store),
  },
  {
    id: 'reset-grade',
    label: 'Reset the grade',
    group: 'Cues',
    isPossible: hasCue,
    run: ({ store }) =>
      perform(store, (job) =>
        setGrade(job, editedCues(store), () => IDENTITY_GRADE, 'Reset grade'),
      ),
  },
  {
    id: 'reset-framing',
    label: 'Reset the framing',
    group: 'Cues',
    isPossible: hasCue,
    run: ({ store }) =>
      perform(store, (job) =>
        setFraming(job, editedCues(store), () => IDENTITY_FRAMING, 'Reset framing'),
      ),
  },
  {
    id: 'next-outside',
    label: 'Next cue outside tolerance',
    group: 'Cues',
    isPossible: (state) => standingOf(state).outside > 0,
    run: ({ store, services }) => {
      const state = store.getState()
      const cue = nextCueWhere(
        state,
        state.playhead,
        (candidate) => verdictOf(state, candidate)?.isInside === false,
      )
      const verdict = cue && verdictOf(state, cue)
      if (verdict) services.seek(verdict.worstFrame)
      else tell(store, 'No cue measured so far is outside tolerance.')
    },
  },
]
