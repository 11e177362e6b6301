import type { AppStore } from '../store/appStore.ts'
import { setTransferring } from '../store/transferring.ts'
import type { TransferDesk } from '../ui/services.ts'
import { takeScanChecksum } from './scanChecksumTaking.ts'
import type { Workers } from './workers.ts'

const notHere = (): never => {
  throw new Error('Bug: passes are not made in the browser yet')
}

/** Makes the transfer of the reel on screen. */
export const createTransferDesk = (store: AppStore, workers: Workers): TransferDesk => ({
  takeChecksum: () => takeScanChecksum(store, workers),
  look: async () => {
    const { quota, usage } = await navigator.storage.estimate()
    setTransferring(store, { room: quota === undefined ? undefined : quota - (usage ?? 0) })
  },
  start: notHere,
  goOn: notHere,
  pause: notHere,
  unpause: notHere,
  stop: notHere,
  discard: notHere,
})
