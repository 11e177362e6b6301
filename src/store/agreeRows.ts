import type { Agreement } from '../core/agreement/agreementOf.ts'
import type { Cue } from '../core/job/job.ts'
import type { CueId } from '../core/job/recordIds.ts'
import { reportFrame } from '../core/report/reportFrame.ts'
import type { Frame } from '../core/time/frame.ts'
import { agreementOfBits, NOT_AGREED } from './cueBits.ts'
import { cuesOf, endOfCue, previousCue, reelOf } from './queries.ts'
import { standingOf } from './standing.ts'
import type { AppState } from './state.ts'

/** A row of the list to agree: the head of a scene, or a picture of it. */
export type AgreeRow =
  | { readonly kind: 'scene'; readonly scene: string; readonly cues: readonly CueId[] }
  | {
      readonly kind: 'cue'
      readonly cue: Cue
      /** From 1. */
      readonly number: number
      readonly standing: Agreement
    }

/** The first place after `from` where another scene begins, or the list ends. */
const sceneEnd = (cues: readonly Cue[], from: number): number => {
  let end = from + 1
  while (end < cues.length && cues[end]?.scene === cues[from]?.scene) end++
  return end
}

/** The cues of the reel in order, those of a scene that follow one another under its head. */
export const agreeRows = (state: AppState): readonly AgreeRow[] => {
  const cues = cuesOf(state)
  const { bits } = standingOf(state)
  const rows: AgreeRow[] = []
  let end = 0
  for (const [index, cue] of cues.entries()) {
    if (index === end) {
      end = sceneEnd(cues, index)
      const scene = cues.slice(index, end).map(({ id }) => id)
      rows.push({ kind: 'scene', scene: cue.scene, cues: scene })
    }
    const standing = agreementOfBits(bits[index] ?? NOT_AGREED)
    rows.push({ kind: 'cue', cue, number: index + 1, standing })
  }
  return rows
}

/** Of these cues, those of which nothing holds: open, or changed since. Asked changes stay asked. */
export const unsaidOf = (state: AppState, ids: readonly CueId[]): readonly CueId[] => {
  const wanted = new Set(ids)
  const { bits } = standingOf(state)
  return cuesOf(state).flatMap(({ id }, index) => {
    const standing = agreementOfBits(bits[index] ?? NOT_AGREED)
    return wanted.has(id) && (standing === 'open' || standing === 'changed') ? [id] : []
  })
}

/** The frame a cue is known by: the middle one of those with its own values. */
export const middleFrame = (state: AppState, cue: Cue): Frame => {
  const cues = cuesOf(state)
  const reel = reelOf(state)
  return reel ? reportFrame(cue, previousCue(cues, cue), endOfCue(cues, cue, reel)) : cue.first
}
