import { setReel } from '../core/job/commands/setReel.ts'
import type { AppStore } from '../store/appStore.ts'
import { perform } from '../store/document.ts'
import { reelOf } from '../store/queries.ts'
import { setTransferring } from '../store/transferring.ts'
import { createPaceKeeper } from '../work/pace.ts'
import { tellError } from './tellError.ts'
import type { Workers } from './workers.ts'

/**
 * Takes the checksum of the scan that is open. Where the job has none of it yet, it goes into the
 * job: later scans are held to it.
 */
export const takeScanChecksum = async (
  store: AppStore,
  workers: Pick<Workers, 'stills'>,
): Promise<void> => {
  const reel = reelOf(store.getState())
  if (!reel || store.getState().transferring.taking) return
  const { bytes } = reel.media
  const pace = createPaceKeeper(bytes, () => performance.now())
  const onProgress = (done: number) => setTransferring(store, { taking: pace(done) })
  onProgress(0)
  try {
    const { sha256 } = await workers.stills('checksum', undefined, { onProgress })
    if (reelOf(store.getState())?.media.bytes !== bytes) return
    setTransferring(store, { taken: sha256 })
    perform(store, (job) =>
      setReel(
        job,
        reel.id,
        (each) =>
          each.media.checksum === null
            ? { ...each, media: { ...each.media, checksum: sha256 } }
            : each,
        'Checksum of the scan',
      ),
    )
  } catch (error) {
    tellError(store, error)
  } finally {
    setTransferring(store, { taking: undefined })
  }
}
