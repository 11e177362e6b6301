import { writeJob } from '../core/formats/job/writeJob.ts'
import type { Job } from '../core/job/job.ts'
import type { AppStore } from '../store/appStore.ts'
import { lookedInJob, noteLooked, recallLooked } from '../store/looked.ts'
import type { AppState } from '../store/state.ts'
import type { Shelf } from './shelf.ts'
import { tellError } from './tellError.ts'

/** Changes that come within this time are written together; well under a second. */
const GATHER_MS = 300

type Pending = { readonly job: Job; readonly key: string; readonly isSample: boolean }

export type Autosave = {
  /** Writes what waits to be written, now. */
  readonly flush: () => Promise<void>
}

/**
 * Keeps which cues were looked at beside the job, and recalls it when the job is opened again. Returns
 * what writes it now. That this fails is no loss to tell of: the cues are then to be looked at anew.
 */
const startKeepingLooked = (store: AppStore, shelf: Shelf): (() => Promise<void>) => {
  let pending: { readonly key: string; readonly state: AppState } | undefined
  let timer: ReturnType<typeof setTimeout> | undefined
  /** The job whose looks were recalled: until then nothing is written over them. */
  let recalled: string | undefined

  const flush = async (): Promise<void> => {
    clearTimeout(timer)
    timer = undefined
    const next = pending
    pending = undefined
    if (next) await shelf.putLooked(next.key, lookedInJob(next.state)).catch(() => undefined)
  }
  const recall = async (key: string): Promise<void> => {
    const ids = await shelf.getLooked(key).catch(() => [])
    if (store.getState().shelfKey !== key) return
    recalled = key
    recallLooked(store, ids)
  }
  store.subscribe((state, before) => {
    const { shelfKey, looked } = state
    if (shelfKey !== before.shelfKey) {
      void flush()
      recalled = undefined
      if (shelfKey !== undefined) void recall(shelfKey)
    }
    if (shelfKey === undefined || shelfKey !== recalled || looked === before.looked) return
    pending = { key: shelfKey, state }
    timer ??= setTimeout(() => void flush(), GATHER_MS)
  })
  noteLooked(store)
  return flush
}

/** Keeps the job in the browser's storage within a second of every change. */
export const startAutosave = (store: AppStore, shelf: Shelf, isSample: () => boolean): Autosave => {
  let pending: Pending | undefined
  let timer: ReturnType<typeof setTimeout> | undefined
  let writing: Promise<void> = Promise.resolve()

  const write = async ({ job, key, isSample: isTheSample }: Pending): Promise<void> => {
    const at = Date.now()
    const isShown = () => store.getState().shelfKey === key
    try {
      await shelf.put({
        key,
        title: job.info.job.title,
        cues: Object.keys(job.cues).length,
        at,
        text: writeJob(job),
        isSample: isTheSample,
      })
      if (isShown() && pending === undefined) store.setState({ saving: { state: 'saved', at } })
    } catch (error) {
      if (isShown()) store.setState({ saving: { state: 'failed', at: undefined } })
      tellError(store, error)
    }
  }
  const flushLooked = startKeepingLooked(store, shelf)
  const flush = (): Promise<void> => {
    clearTimeout(timer)
    timer = undefined
    const next = pending
    pending = undefined
    if (next) writing = writing.then(() => write(next))
    writing = writing.then(flushLooked)
    return writing
  }
  store.subscribe((state, before) => {
    const { history, shelfKey } = state
    if (shelfKey !== before.shelfKey) void flush()
    if (!history || shelfKey === undefined) return
    if (history.job === before.history?.job && shelfKey === before.shelfKey) return
    pending = { job: history.job, key: shelfKey, isSample: isSample() }
    timer ??= setTimeout(() => void flush(), GATHER_MS)
  })
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'hidden') void flush()
  })
  window.addEventListener('pagehide', () => void flush())
  return { flush }
}
