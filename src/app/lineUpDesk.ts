import { readReadings } from '../core/formats/readings/readReadings.ts'
import { writeReadings } from '../core/formats/readings/writeReadings.ts'
import type { AppStore } from '../store/appStore.ts'
import { openAdjustment } from '../store/liningUp.ts'
import { tellProblems } from '../store/notices.ts'
import type { ReadingsDesk } from '../ui/services.ts'

const PLACE = 'reelwright.line-up'

type SaveText = (name: string, text: string, type: string) => Promise<void>

/** Readings of a line-up as a file, opened and saved. */
export const createLineUpDesk = (
  store: AppStore,
  pick: () => Promise<File | undefined>,
  save: SaveText,
): ReadingsDesk => ({
  open: async () => {
    const file = await pick()
    if (!file) return
    const read = readReadings(await file.text())
    if (read.ok) openAdjustment(store, read.value)
    else tellProblems(store, read.problems)
  },
  save: () => {
    const { adjustment } = store.getState().liningUp
    return save('line-up.readings.json', writeReadings(adjustment), 'application/json')
  },
})

/**
 * Keeps the line-up of this computer from one visit to the next: it is of a machine, not of a job.
 * What cannot be read or kept is left.
 */
export const keepLineUp = (store: AppStore, storage: () => Storage): void => {
  try {
    const kept = storage().getItem(PLACE)
    const read = kept === null ? undefined : readReadings(kept)
    if (read?.ok) openAdjustment(store, read.value)
  } catch {
    // A closed storage keeps nothing; what is done now holds for this page.
  }
  store.subscribe(({ liningUp }, before) => {
    if (liningUp.adjustment === before.liningUp.adjustment) return
    try {
      if (liningUp.adjustment.log.length === 0) storage().removeItem(PLACE)
      else storage().setItem(PLACE, writeReadings(liningUp.adjustment))
    } catch {
      // The same.
    }
  })
}
