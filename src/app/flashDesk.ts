import { codingOf } from '../core/job/codingOf.ts'
import type { AppStore } from '../store/appStore.ts'
import { setFlashWatch } from '../store/flashWatch.ts'
import { cuesOf, endOfCue, reelOf } from '../store/queries.ts'
import type { FlashDesk } from '../ui/services.ts'
import { createPaceKeeper } from '../work/pace.ts'
import { isAbort, tellError } from './tellError.ts'
import type { Workers } from './workers.ts'

/** Watches the whole reel for flashes as it would be delivered, across all its cuts. */
export const createFlashDesk = (store: AppStore, workers: Pick<Workers, 'passes'>): FlashDesk => {
  let running: AbortController | undefined
  return {
    watch: async () => {
      const state = store.getState()
      const reel = reelOf(state)
      const cues = cuesOf(state)
      if (!reel || running) return
      const stop = new AbortController()
      running = stop
      const pace = createPaceKeeper(reel.frames, () => performance.now())
      const onProgress = (done: number) => setFlashWatch(store, { progress: pace(done) })
      onProgress(0)
      const checks = cues.map((cue, index) => ({
        cue,
        previous: cues[index - 1],
        end: endOfCue(cues, cue, reel),
      }))
      const request = { checks, coding: codingOf(reel), rate: reel.rate }
      try {
        const report = await workers.passes('checkFlashes', request, {
          onProgress,
          signal: stop.signal,
        })
        if (report) setFlashWatch(store, { found: { report, cues, reel } })
      } catch (error) {
        if (!isAbort(error)) tellError(store, error)
      } finally {
        running = undefined
        setFlashWatch(store, { progress: undefined })
      }
    },
    stop: () => running?.abort(),
  }
}
