import { writeJob } from '../core/formats/job/writeJob.ts'
import type { Job } from '../core/job/job.ts'
import type { AppStore } from '../store/appStore.ts'
import type { Shelf } from './shelf.ts'
import { tellError } from './tellError.ts'

/** Changes that come within this time are written together; well under a second. */
const GATHER_MS = 300

type Pending = { readonly job: Job; readonly key: string; readonly isSample: boolean }

export type Autosave = {
  /** Writes what waits to be written, now. */
  readonly flush: () => Promise<void>
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
  const flush = (): Promise<void> => {
    clearTimeout(timer)
    timer = undefined
    const next = pending
    pending = undefined
    if (next) writing = writing.then(() => write(next))
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
