import { type Grade, IDENTITY_GRADE } from '../core/colour/grade.ts'
import type { Cue } from '../core/job/job.ts'
import type { HeldId } from '../core/job/recordIds.ts'
import { type Framing, IDENTITY_FRAMING } from '../core/picture/framing.ts'
import type { Frame } from '../core/time/frame.ts'
import { cueAtFrame, jobOf } from './queries.ts'
import { shownValuesAt } from './shownValues.ts'
import type { AppState } from './state.ts'
import type { Arrangement } from './view.ts'

/** A picture beside the graded one: which frame it is of, what is done to it, and its name. */
export type Compared = {
  readonly word: string
  /** The frame on screen, or a held one (or an opened still) by its id. */
  readonly of: 'frame' | HeldId
  readonly grade: Grade
  readonly framing: Framing
  /** Whether it could be delivered, so that excursions are marked on it as well. */
  readonly isDeliverable: boolean
}

/** What the graded picture is called beside others. */
export const gradedWord = (state: AppState, frame: Frame): string => {
  const name = cueAtFrame(state, frame)?.gradeName
  return name ? `${name} · in force` : 'graded'
}

const alternatesOf = (state: AppState, cue: Cue, frame: Frame): readonly Compared[] =>
  cue.alternates.flatMap(({ name, grade }) => {
    const values = shownValuesAt(state, frame, grade)
    return values
      ? [{ word: name, of: 'frame', ...values, isDeliverable: true } satisfies Compared]
      : []
  })

const scanOf = (state: AppState, frame: Frame): readonly Compared[] => {
  const values = shownValuesAt(state, frame)
  if (!values) return []
  const { framing } = values
  return [{ word: 'scanned', of: 'frame', grade: IDENTITY_GRADE, framing, isDeliverable: false }]
}

const heldOf = (state: AppState, id: HeldId): readonly Compared[] => {
  const held = jobOf(state)?.held[id]
  if (held) {
    const { name, grade, framing } = held
    return [{ word: name, of: id, grade, framing, isDeliverable: false }]
  }
  const still = state.view.stills.find((opened) => opened.id === id)
  const plain = { grade: IDENTITY_GRADE, framing: IDENTITY_FRAMING, isDeliverable: false }
  return still ? [{ word: still.name, of: id, ...plain }] : []
}

/** How pictures are arranged now: the scan shown whole, by key or for framing, stands alone. */
export const arrangementOf = ({ view }: AppState): Arrangement =>
  view.isPeeking || view.showsAperture ? 'alone' : view.arrangement

/** The pictures beside the graded one on a frame; none where it stands alone or has none such. */
export const comparedAt = (state: AppState, frame: Frame): readonly Compared[] => {
  const arrangement = arrangementOf(state)
  const { against } = state.view
  const cue = cueAtFrame(state, frame)
  if (arrangement === 'alone' || !cue) return []
  if (against.kind === 'scanned') return scanOf(state, frame)
  if (against.kind === 'held') return heldOf(state, against.id)
  const alternates = alternatesOf(state, cue, frame)
  if (against.kind === 'alternate') return alternates.slice(against.index, against.index + 1)
  return arrangement === 'side-by-side' ? alternates : alternates.slice(0, 1)
}

/** The names of the pictures shown for the frame under the line from the left: the graded one last. */
export const picturesShown = (state: AppState): readonly string[] => [
  ...comparedAt(state, state.playhead).map(({ word }) => word),
  gradedWord(state, state.playhead),
]
