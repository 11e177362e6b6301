import { moveLabel } from '../core/surface/moveLabel.ts'
import {
  moveFraming,
  moveGrade,
  readNumber,
  type WantedValues,
} from '../core/surface/moveValues.ts'
import {
  roundedFor,
  type SurfaceNumberId,
  surfaceNumber,
  withinLimits,
} from '../core/surface/surfaceNumber.ts'
import type { AppStore } from '../store/appStore.ts'
import { endGesture } from '../store/document.ts'
import { changeFraming, changeGrade } from '../store/grading.ts'
import { currentCue } from '../store/queries.ts'

/** Changes of the cue under the line by a control surface; from rest to rest is one undo step. */
export type SurfaceChanges = {
  /** The value of a number of the cue under the line; undefined where there is none. */
  readonly present: (id: SurfaceNumberId) => number | undefined
  /** Moves numbers by so much. */
  readonly move: (by: ReadonlyMap<SurfaceNumberId, number>) => void
  /** Sets a number. */
  readonly set: (id: SurfaceNumberId, value: number) => void
  /** All controls have come to rest: the next change is an undo step of its own. */
  readonly rest: () => void
}

/** How long controls lie still before a movement is over, in milliseconds. */
export const REST_MS = 300

/** A number on its way: what it was rounded to, and what it would be exactly. */
type OnItsWay = { readonly kept: number; readonly exact: number }

let movements = 0

export const createSurfaceChanges = (store: AppStore): SurfaceChanges => {
  const onTheWay = new Map<SurfaceNumberId, OnItsWay>()
  let moved = new Set<SurfaceNumberId>()
  let gesture: string | undefined
  let owner: string | undefined

  const rest = (): void => {
    onTheWay.clear()
    moved = new Set()
    owner = undefined
    if (gesture === undefined) return
    const isOurs = store.getState().gesture === gesture
    gesture = undefined
    if (isOurs) endGesture(store)
  }

  const present = (id: SurfaceNumberId): number | undefined => {
    const cue = currentCue(store.getState())
    return cue && readNumber(id, cue)
  }

  const change = (wanted: WantedValues): void => {
    for (const id of wanted.keys()) moved.add(id)
    gesture ??= `control surface ${movements++}`
    const label = moveLabel(moved)
    const ofGrade = [...wanted.keys()].filter((id) => surfaceNumber(id).of === 'grade').length
    if (ofGrade > 0) changeGrade(store, label, (grade) => moveGrade(grade, wanted), gesture)
    if (ofGrade < wanted.size)
      changeFraming(store, label, (framing) => moveFraming(framing, wanted), gesture)
  }

  /** Whether there is a cue to change. One that has just come under the line is a step of its own. */
  const isReady = (): boolean => {
    const cue = currentCue(store.getState())
    if (cue && owner !== undefined && owner !== cue.id) rest()
    owner = cue?.id
    return cue !== undefined
  }

  return {
    present,
    rest,
    set: (id, value) => {
      const number = surfaceNumber(id)
      if (isReady()) change(new Map([[id, roundedFor(number, withinLimits(number, value))]]))
    },
    move: (by) => {
      if (!isReady()) return
      const exact = new Map<SurfaceNumberId, number>()
      for (const [id, step] of by) {
        const now = present(id) ?? 0
        const way = onTheWay.get(id)
        const from = way && Math.abs(way.kept - now) < 1e-6 ? way.exact : now
        exact.set(id, withinLimits(surfaceNumber(id), from + step))
      }
      const rounded = [...exact].map(([id, to]) => [id, roundedFor(surfaceNumber(id), to)] as const)
      change(new Map(rounded))
      for (const [id, to] of rounded) {
        const kept = present(id) ?? to
        const hasArrived = Math.abs(kept - to) < 1e-6
        onTheWay.set(id, { kept, exact: hasArrived ? (exact.get(id) ?? kept) : kept })
      }
    },
  }
}
