import { measureSound } from '../../media/browser/measureSound.ts'
import { type Port, serveCalls } from '../../work/rpc.ts'
import type { SoundCalls } from '../../work/soundCalls.ts'

serveCalls<SoundCalls>(self as unknown as Port, {
  measure: (file, { progress, signal }) =>
    measureSound(file, (done, total) => progress({ done, total }), signal),
})
