import { type AperturePreset, frameToAperture } from '../core/framing/frameToAperture.ts'
import { blankingFor } from '../core/framing/openRatio.ts'
import { setFraming } from '../core/job/commands/setFraming.ts'
import type { Framing } from '../core/picture/framing.ts'
import type { AppStore } from './appStore.ts'
import { perform } from './document.ts'
import { reelOf } from './queries.ts'
import { editedCues } from './selection.ts'

/**
 * A choice of a named value goes to all edited cues alike, also while trimming: who asks for 1.85
 * wants 1.85 on each of them.
 */
const setAlike = (store: AppStore, label: string, edit: (framing: Framing) => Framing): boolean =>
  perform(store, (job) => setFraming(job, editedCues(store), edit, label))

export const setSqueeze = (store: AppStore, squeeze: number): boolean =>
  setAlike(store, `squeeze ${squeeze.toFixed(1)}`, (framing) => ({ ...framing, squeeze }))

/** Blanks to a ratio, or not at all. */
export const blankTo = (store: AppStore, ratio: number | undefined): boolean => {
  const reel = reelOf(store.getState())
  if (!reel) return false
  const blanking = ratio === undefined ? 0 : blankingFor(ratio, reel.media.displayAspect)
  const label = ratio === undefined ? 'no blanking' : `blank to ${ratio.toFixed(2)}`
  return setAlike(store, label, (framing) => ({ ...framing, blanking }))
}

/** Frames one area of the film from the scan of another. */
export const frameTo = (store: AppStore, preset: AperturePreset): boolean => {
  const reel = reelOf(store.getState())
  if (!reel) return false
  const { displayAspect } = reel.media
  return setAlike(store, `frame to ${preset.wanted.name}`, (framing) =>
    frameToAperture(framing, displayAspect, preset),
  )
}
