import { fileNameOf } from '../core/formats/listNames.ts'
import { cuesOfReel } from '../core/job/cueList.ts'
import type { Job, Reel } from '../core/job/job.ts'
import type { FramePictures, ReportFacts, ScanChecksum } from '../core/report/reportFacts.ts'
import type { AppStore } from '../store/appStore.ts'
import { checkKeyAt } from '../store/checkKey.ts'
import { tell } from '../store/notices.ts'
import { jobOf, profileOf, reelOf } from '../store/queries.ts'
import type { AppState } from '../store/state.ts'
import type { ReportOptions } from '../ui/services.ts'
import type { PicturesRequest } from '../work/framePictures.ts'
import { gatherReport } from '../work/reportFacts.ts'
import { CallError } from '../work/rpc.ts'
import { createSameScan } from './sameScan.ts'
import { tellError } from './tellError.ts'
import type { Workers } from './workers.ts'

type SaveFile = (name: string, make: () => Promise<Blob>) => Promise<boolean>

const percent = (done: number, total: number): number => Math.floor((100 * done) / (total || 1))

/** Makes the report of the reel on screen and saves it; `madeOn` is today in words. */
export const createReportSaving = (
  store: AppStore,
  workers: Pick<Workers, 'stills' | 'handOver'>,
  saveFile: SaveFile,
  madeOn: () => string,
) => {
  const scan = createSameScan(store, 'The report')
  const pictures =
    (reel: Reel, signal: AbortSignal) =>
    async (request: PicturesRequest): Promise<FramePictures | undefined> => {
      scan.assert(reel)
      try {
        const made = await workers.stills('pictures', request, { signal })
        scan.assert(reel)
        return made
      } catch (error) {
        // A frame that is damaged has no picture; the report says so.
        if (error instanceof CallError && error.problem && !scan.isAbandoned(error))
          return undefined
        throw error
      }
    }
  const checksum = async (
    reel: Reel,
    { wantsChecksum, onProgress, signal }: ReportOptions,
  ): Promise<ScanChecksum | undefined> => {
    if (!wantsChecksum || store.getState().media !== 'ready') return undefined
    const onBytes = (done: number) =>
      onProgress(`Reading the scan for its checksum: ${percent(done, reel.media.bytes)} %`)
    onBytes(0)
    const made = await workers.stills('checksum', undefined, { onProgress: onBytes, signal })
    scan.assert(reel)
    return made
  }
  const make = async (
    state: AppState,
    job: Job,
    reel: Reel,
    options: ReportOptions,
  ): Promise<Blob> => {
    const { onProgress, signal } = options
    const cues = cuesOfReel(job, reel.id)
    const profile = profileOf(job)
    const taken = await checksum(reel, options)
    const sources = {
      pictures: state.media === 'ready' ? pictures(reel, signal) : undefined,
      verdict: (index: number) =>
        state.verdicts.entries.get(checkKeyAt(cues, index, reel, profile)),
    }
    const gathered = await gatherReport(
      job,
      reel,
      sources,
      (done, total) => onProgress(`Pictures of cue ${done} of ${total}`),
      signal,
    )
    onProgress('Writing the report')
    const facts: Omit<ReportFacts, 'lists'> = {
      ...{ job, reelId: reel.id, madeOn: madeOn(), scan: taken },
      ...gathered,
    }
    const page = await workers.handOver('report', facts, { signal })
    if (page.ok) return page.value
    throw new CallError(page.problems[0].says, page.problems[0])
  }
  return async (options: ReportOptions): Promise<void> => {
    const state = store.getState()
    const job = jobOf(state)
    const reel = reelOf(state)
    if (!job || !reel) return
    const name = `${fileNameOf(reel)}-report.html`
    try {
      if (await saveFile(name, () => make(state, job, reel, options))) tell(store, `Saved ${name}.`)
    } catch (error) {
      tellError(store, error)
    }
  }
}
