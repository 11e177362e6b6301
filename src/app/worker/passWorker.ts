import { openMedia } from '../../media/browser/openMedia.ts'
import type { PassCalls } from '../../work/passCalls.ts'
import { passHandlers } from '../../work/passHandlers.ts'
import { type Port, serveCalls } from '../../work/rpc.ts'
import { kernelHere } from './kernelHere.ts'

serveCalls<PassCalls>(
  self as unknown as Port,
  passHandlers({
    openMedia,
    loadKernel: kernelHere,
    loadVideo: async () => (await import('../../media/browser/videoTools.ts')).browserVideoTools,
    storage: () => navigator.storage.getDirectory(),
  }),
)
