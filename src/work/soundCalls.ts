import type { Result } from '../core/base/result.ts'
import type { SoundFacts } from '../core/sound/measureSound.ts'

/** What the sound worker does. */
export type SoundCalls = {
  /** Measures the first sound of a file; progress is seconds done, of all. */
  readonly measure: {
    readonly args: File
    readonly progress: { readonly done: number; readonly total: number }
    readonly answer: Result<SoundFacts>
  }
}
