import type { GuideTrack } from '../core/film/guideTrack.ts'
import { setGuide } from '../core/job/commands/setGuide.ts'
import type { Reel } from '../core/job/job.ts'
import type { AppStore } from '../store/appStore.ts'
import { perform } from '../store/document.ts'
import { INITIAL_GUIDING, setGuiding } from '../store/guiding.ts'
import { tellProblems } from '../store/notices.ts'
import { reelOf } from '../store/queries.ts'
import type { GuideDesk } from '../ui/services.ts'
import type { GuideSound } from './guideSound.ts'
import { tellError } from './tellError.ts'
import type { Workers } from './workers.ts'

/** Where a track lies as long as nobody said: its beginning on the reel's first sync mark. */
const firstGuide = (name: string, { particulars, rate }: Reel): GuideTrack => ({
  ...{ name, madeFor: particulars.speed ?? rate },
  mark: { frame: particulars.marks.find(({ kind }) => kind === 'sync')?.frame ?? 0, seconds: 0 },
})

/** Opens the guide track of the reel on screen; see `Guiding` in the store. */
export const createGuideDesk = (
  store: AppStore,
  workers: Pick<Workers, 'sound'>,
  sound: GuideSound,
  pick: () => Promise<File | undefined>,
): GuideDesk => {
  let measuring: AbortController | undefined
  const forget = (): void => {
    measuring?.abort()
    sound.close()
    const { isHeard, lowPass } = store.getState().guiding
    setGuiding(store, { ...INITIAL_GUIDING, isHeard, lowPass })
  }
  const measure = async (file: File, signal: AbortSignal): Promise<void> => {
    const onProgress = ({ done, total }: { done: number; total: number }) =>
      setGuiding(store, { measured: total > 0 ? Math.min(1, done / total) : 0 })
    const facts = await workers.sound('measure', file, { onProgress, signal })
    if (signal.aborted) return
    setGuiding(store, { measured: undefined })
    if (facts.ok) setGuiding(store, { facts: facts.value })
    else {
      forget()
      tellProblems(store, facts.problems)
    }
  }
  // What is open belongs to the reel it was opened for.
  store.subscribe((state, before) => {
    if (reelOf(state)?.id !== reelOf(before)?.id && before.guiding.name !== undefined) forget()
  })
  return {
    open: async () => {
      const file = await pick()
      const reel = reelOf(store.getState())
      if (!file || !reel) return
      forget()
      measuring = new AbortController()
      const { signal } = measuring
      const guide = reel.guide ? { ...reel.guide, name: file.name } : firstGuide(file.name, reel)
      if (reel.guide?.name !== file.name && !perform(store, (job) => setGuide(job, reel.id, guide)))
        return
      sound.open(file)
      setGuiding(store, { name: file.name, measured: 0 })
      try {
        await measure(file, signal)
      } catch (error) {
        tellError(store, error)
      }
    },
    takeOut: () => {
      const reel = reelOf(store.getState())
      forget()
      if (reel) perform(store, (job) => setGuide(job, reel.id, null))
    },
  }
}
