import { fileNameOf } from '../core/formats/listNames.ts'
import type { AppStore } from '../store/appStore.ts'
import { tell } from '../store/notices.ts'
import { jobOf, reelOf } from '../store/queries.ts'
import { CallError } from '../work/rpc.ts'
import type { saveFile } from './files.ts'
import { tellError } from './tellError.ts'
import type { Workers } from './workers.ts'

/** Saves the inspection report of the reel on screen; `madeOn` is today in words. */
export const createInspectionSaving =
  (
    store: AppStore,
    workers: Pick<Workers, 'handOver'>,
    save: typeof saveFile,
    madeOn: () => string,
  ) =>
  async (): Promise<void> => {
    const job = jobOf(store.getState())
    const reel = reelOf(store.getState())
    if (!job || !reel) return
    const name = `${fileNameOf(reel)}-inspection.html`
    const make = async (): Promise<Blob> => {
      const asked = { job, reelId: reel.id, madeOn: madeOn() }
      const page = await workers.handOver('inspection', asked)
      if (page.ok) return page.value
      throw new CallError(page.problems[0].says, page.problems[0])
    }
    try {
      if (await save(name, make)) tell(store, `Saved ${name}.`)
    } catch (error) {
      tellError(store, error)
    }
  }
