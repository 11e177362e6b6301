import { sha256OfText } from '../core/base/sha256.ts'
import { decidedText } from '../core/transfer/decidedText.ts'
import type { AppStore } from '../store/appStore.ts'
import { planOf } from '../store/transferFacts.ts'
import { setTransferring } from '../store/transferring.ts'

/**
 * Keeps the checksum of all that would decide a pass as the job is now, while the page of the
 * transfer is shown: passes made from other values can be told by it. Returns how to stop.
 */
export const startDecidedFeed = (store: AppStore): (() => void) =>
  store.subscribe((state, before) => {
    const isSame =
      state.history?.job === before.history?.job &&
      state.step === before.step &&
      state.reelId === before.reelId
    if (isSame || state.step !== 'transfer') return
    const plan = planOf(state)
    const text = plan && decidedText(plan)
    const decidedNow = text?.ok ? sha256OfText(text.value) : undefined
    if (decidedNow !== state.transferring.decidedNow) setTransferring(store, { decidedNow })
  })
