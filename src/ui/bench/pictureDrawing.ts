import { IDENTITY_GRADE } from '../../core/colour/grade.ts'
import { IDENTITY_FRAMING } from '../../core/picture/framing.ts'
import type { Coding, Planes } from '../../core/picture/planes.ts'
import { stillPlanes } from '../../core/picture/stillPlanes.ts'
import type { TileArea } from '../../core/picture/tileLayout.ts'
import type { Frame } from '../../core/time/frame.ts'
import { levelLimits } from '../../core/tolerance/levelLimits.ts'
import type { Compare, PreviewView, Side } from '../../render/previewView.ts'
import { apertureFramingOf } from '../../store/apertureView.ts'
import { arrangementOf, type Compared, comparedAt } from '../../store/compared.ts'
import { measuredCoding } from '../../store/pointValues.ts'
import { cueAtFrame, profileOf, reelOf } from '../../store/queries.ts'
import { shownValuesAt } from '../../store/shownValues.ts'
import type { AppState } from '../../store/state.ts'
import type { PlacedStill, Services, ShownFrame } from '../services.ts'

/** What is put on the screen for the frame under the line, until that itself is there. */
type OnScreen = {
  readonly frame: Frame
  readonly planes: Planes
  readonly coding: Coding
  /** Whether it is a small still that stands in. */
  readonly isStandIn: boolean
}

export type Drawing = {
  readonly planes: Planes
  readonly coding: Coding
  readonly view: PreviewView
  /** What the instruments are to measure the frame with; nothing of a stand-in. */
  readonly measured: Pick<PreviewView, 'grade' | 'framing'> | undefined
}

/** Within this many frames the frame that was shown before stands in better than a small still. */
const NEAR_ENOUGH = 12

/** Whether a still stands in better for the frame under the line than the frame shown before. */
const standsInBetter = (
  state: AppState,
  still: PlacedStill | undefined,
  shown: ShownFrame | undefined,
): still is PlacedStill => {
  if (!still) return false
  if (!shown) return true
  const isOtherCue = cueAtFrame(state, shown.frame) !== cueAtFrame(state, state.playhead)
  const [near, before] = [still.frame, shown.frame].map((at) => Math.abs(at - state.playhead))
  return isOtherCue || ((before ?? 0) > NEAR_ENOUGH && (near ?? 0) < (before ?? 0))
}

const onScreen = (
  state: AppState,
  { frames, stills }: Pick<Services, 'frames' | 'stills'>,
): OnScreen | undefined => {
  const shown = frames.current()
  const reel = reelOf(state)
  const isWaiting = state.media === 'ready' && !state.playback.isPlaying
  if (reel && isWaiting && shown?.frame !== state.playhead) {
    const near = stills.nearest(state.playhead)
    if (standsInBetter(state, near, shown)) {
      const planes = stillPlanes(near.still)
      const pixelAspect = reel.media.displayAspect / (planes.width / planes.height)
      const coding = { matrix: reel.media.matrix, range: 'narrow', pixelAspect } as const
      return { frame: state.playhead, planes, coding, isStandIn: true }
    }
  }
  return shown && { ...shown, coding: measuredCoding(state, shown.coding), isStandIn: false }
}

const sideOf = (
  { of, grade, framing, isDeliverable }: Compared,
  { planes, coding, isStandIn }: OnScreen,
  held: Services['held'],
): Side | undefined => {
  const values = { grade, framing, isMarked: isDeliverable && !isStandIn }
  if (of === 'frame') return { planes, coding, ...values }
  const kept = held.get(of)
  if (!kept) held.request(of)
  return kept && { planes: kept.planes, coding: kept.coding, ...values }
}

/** How pictures stand to the graded one; those that are not there yet are left out. */
const compareOf = (
  state: AppState,
  shown: OnScreen,
  held: Services['held'],
  areas: readonly TileArea[],
): Compare => {
  const arrangement = arrangementOf(state)
  const sides = comparedAt(state, shown.frame).map((compared) => sideOf(compared, shown, held))
  if (arrangement === 'side-by-side') {
    const main = areas.at(-1)
    if (!main) return { kind: 'none' }
    const others = sides.flatMap((side, index) => {
      const area = areas[index]
      return side && area ? [{ side, area }] : []
    })
    return { kind: 'tiles', main, others }
  }
  const [other] = sides
  if (!other || arrangement === 'alone') return { kind: 'none' }
  return arrangement === 'wipe'
    ? { kind: 'wipe', at: state.view.wipeAt, other }
    : { kind: 'difference', other }
}

/** What is to be drawn now, from the job and the view as they are; undefined without a frame. */
export const drawingOf = (
  state: AppState,
  services: Pick<Services, 'frames' | 'stills' | 'held'>,
  areas: readonly TileArea[],
): Drawing | undefined => {
  const shown = onScreen(state, services)
  const job = state.history?.job
  const values = shown && shownValuesAt(state, shown.frame)
  if (!shown || !values || !job) return undefined
  const { view } = state
  const { planes, coding, isStandIn } = shown
  const isMarked = view.showsExcursions && !isStandIn && !view.isPeeking
  return {
    planes,
    coding,
    view: {
      grade: view.isPeeking ? IDENTITY_GRADE : values.grade,
      framing: view.isPeeking
        ? IDENTITY_FRAMING
        : view.showsAperture
          ? apertureFramingOf(state)
          : values.framing,
      compare: compareOf(state, shown, services.held, areas),
      excursions: isMarked ? { ...levelLimits(profileOf(job)), matrix: coding.matrix } : null,
      isMoving: state.playback.isPlaying || state.gesture !== undefined,
      display: view.display,
    },
    measured: isStandIn ? undefined : { grade: values.grade, framing: values.framing },
  }
}
