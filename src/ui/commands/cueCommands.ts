import type { AnswerSays } from '../../core/agreement/answer.ts'
import { IDENTITY_GRADE } from '../../core/colour/grade.ts'
import { joinCues } from '../../core/job/commands/joinCues.ts'
import { setFraming } from '../../core/job/commands/setFraming.ts'
import { setGrade } from '../../core/job/commands/setGrade.ts'
import { splitCue } from '../../core/job/commands/splitCue.ts'
import { isDoubtful } from '../../core/job/isDoubtful.ts'
import { newCueId } from '../../core/job/recordIds.ts'
import { IDENTITY_FRAMING } from '../../core/picture/framing.ts'
import { sayHere } from '../../store/answering.ts'
import { verdictOf } from '../../store/checkKey.ts'
import { NEEDING, OUTSIDE } from '../../store/cueBits.ts'
import { perform } from '../../store/document.ts'
import { isAnyNeeding, needWords, nextCueWith } from '../../store/nextNeeding.ts'
import { tell } from '../../store/notices.ts'
import { currentCue, settledFrame } from '../../store/queries.ts'
import { editedCues, selectAll, selectScene } from '../../store/selection.ts'
import { setSheet } from '../../store/session.ts'
import { standingOf } from '../../store/standing.ts'
import type { AppState } from '../../store/state.ts'
import type { Command } from './command.ts'

const hasCue = (state: AppState): boolean => currentCue(state) !== undefined

const canJoin = (state: AppState): boolean =>
  hasCue(state) && (currentCue(state)?.first !== 0 || state.selection.length > 1)

/** The field of the cue sheet that takes the scene mark. */
const SCENE_FIELD = 'scene-mark'

const agreementCommand = (says: AnswerSays, label: string): Command => ({
  id: `agreement-${says}`,
  label,
  group: 'Cues',
  isPossible: hasCue,
  run: ({ store }) => sayHere(store, editedCues(store), says),
})

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
      const cue = nextCueWith(state, OUTSIDE)
      if (!cue) tell(store, 'No cue measured so far is outside tolerance.')
      else services.seek(verdictOf(state, cue)?.worstFrame ?? cue.first)
    },
  },
  {
    id: 'next-needing',
    label: 'Next cue that needs me',
    group: 'Cues',
    isPossible: isAnyNeeding,
    run: ({ store, services }) => {
      const state = store.getState()
      const cue = nextCueWith(state, NEEDING)
      if (!cue) return
      tell(store, needWords(state, cue))
      services.seek(isDoubtful(cue) ? cue.first : settledFrame(state, cue))
    },
  },
  {
    id: 'mark-scene',
    label: 'Mark the scene…',
    group: 'Cues',
    isPossible: hasCue,
    run: ({ store }) => {
      setSheet(store, 'cue')
      requestAnimationFrame(() => document.getElementById(SCENE_FIELD)?.focus())
    },
  },
  {
    id: 'select-scene',
    label: 'Select all cues of the same scene mark',
    group: 'Cues',
    isPossible: (state) => (currentCue(state)?.scene ?? '') !== '',
    run: ({ store }) => selectScene(store),
  },
  agreementCommand('agreed', 'Cue is agreed'),
  agreementCommand('asked', 'Changes are asked of the cue'),
  agreementCommand('open', 'Cue is open again'),
]
