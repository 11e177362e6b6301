import { problem } from '../core/base/problem.ts'
import { codingOf } from '../core/job/codingOf.ts'
import { type HeldId, newHeldId } from '../core/job/recordIds.ts'
import type { Planes } from '../core/picture/planes.ts'
import { frame } from '../core/time/frame.ts'
import type { AppStore } from '../store/appStore.ts'
import { addStill } from '../store/comparing.ts'
import { tellProblems } from '../store/notices.ts'
import { jobOf, reelOf } from '../store/queries.ts'
import type { HeldPictures, ShownFrame } from '../ui/services.ts'
import { onCodingChange } from './onCodingChange.ts'
import type { ReadStill } from './readStillFile.ts'
import { tellError } from './tellError.ts'
import type { Workers } from './workers.ts'

/** Bytes of frames kept at once, above which the longest unused goes; one is always kept. */
const KEPT_BYTES = 192 * 2 ** 20

/** Stills opened at once in a session. */
const MOST_STILLS = 20

export type HeldDesk = HeldPictures & {
  /** Opens a picture file as a reference for this session, or tells why it cannot. */
  readonly openStill: (file: File) => Promise<void>
  /** Forgets the frames of a reel whose scan is another now. */
  readonly forget: () => void
}

const bytesOf = ({ samples }: Planes): number =>
  samples.reduce((sum, plane) => sum + plane.byteLength, 0)

/** Reads the frames that are held as references, when they are asked for, and keeps a few. */
export const createHeldDesk = (
  store: AppStore,
  workers: Pick<Workers, 'stills'>,
  readStill: ReadStill,
): HeldDesk => {
  /** The longest unused first. */
  const kept = new Map<HeldId, ShownFrame>()
  const files = new Map<HeldId, File>()
  const reading = new Set<HeldId>()
  /** What could not be read; that was told once. */
  const unreadable = new Set<HeldId>()
  const listeners = new Set<() => void>()
  let round = 0

  const tellListeners = (): void => {
    for (const listener of listeners) listener()
  }
  const keep = (id: HeldId, shown: ShownFrame): void => {
    kept.set(id, shown)
    let bytes = [...kept.values()].reduce((sum, { planes }) => sum + bytesOf(planes), 0)
    for (const [oldest, { planes }] of kept) {
      if (bytes <= KEPT_BYTES || oldest === id) break
      kept.delete(oldest)
      bytes -= bytesOf(planes)
    }
    tellListeners()
  }
  const readHeld = async (id: HeldId): Promise<ShownFrame | undefined> => {
    const file = files.get(id)
    if (file) return { frame: frame(0), ...(await readStill(file)) }
    const state = store.getState()
    const held = jobOf(state)?.held[id]
    const reel = reelOf(state)
    if (!held || held.reel !== reel?.id || state.media !== 'ready') return undefined
    const planes = await workers.stills('read', held.frame)
    const now = reelOf(store.getState())
    return now && { frame: held.frame, planes, coding: codingOf(now) }
  }
  const read = async (id: HeldId): Promise<void> => {
    const mine = round
    reading.add(id)
    try {
      const shown = await readHeld(id)
      if (shown && mine === round) keep(id, shown)
    } catch (error) {
      if (mine !== round) return
      unreadable.add(id)
      tellError(store, error)
    } finally {
      reading.delete(id)
      if (mine !== round) tellListeners()
    }
  }
  const forget = (): void => {
    round++
    for (const id of kept.keys()) if (!files.has(id)) kept.delete(id)
    unreadable.clear()
    tellListeners()
  }
  onCodingChange(store, (coding) => {
    for (const [id, shown] of kept) if (!files.has(id)) kept.set(id, { ...shown, coding })
    tellListeners()
  })
  store.subscribe((state, before) => {
    if (state.reelId !== before.reelId || state.shelfKey !== before.shelfKey) forget()
    if (state.view.stills === before.view.stills) return
    const open = new Set(state.view.stills.map(({ id }) => id))
    for (const id of files.keys())
      if (!open.has(id)) {
        files.delete(id)
        kept.delete(id)
      }
  })
  return {
    get: (id) => {
      const shown = kept.get(id)
      if (shown) {
        kept.delete(id)
        kept.set(id, shown)
      }
      return shown
    },
    request: (id) => {
      if (!kept.has(id) && !reading.has(id) && !unreadable.has(id)) void read(id)
    },
    subscribe: (listener) => {
      listeners.add(listener)
      return () => listeners.delete(listener)
    },
    openStill: async (file) => {
      if (files.size >= MOST_STILLS) {
        const says = `At most ${MOST_STILLS} stills are open at once; drop one first.`
        tellProblems(store, [problem('too-large', says)])
        return
      }
      const job = store.getState().shelfKey
      try {
        const still = await readStill(file)
        if (store.getState().shelfKey !== job) return
        const id = newHeldId()
        files.set(id, file)
        addStill(store, id, file.name)
        keep(id, { frame: frame(0), ...still })
      } catch (error) {
        tellError(store, error)
      }
    },
    forget,
  }
}
