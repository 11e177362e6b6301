import { type HandOverFormat, handOverFiles } from '../core/formats/handOverFiles.ts'
import type { AppStore } from '../store/appStore.ts'
import { tellProblems } from '../store/notices.ts'
import { jobOf } from '../store/queries.ts'
import type { HandOver } from '../ui/services.ts'

const FORMATS: readonly { format: HandOverFormat; type: string }[] = [
  { format: 'ccc', type: 'application/xml' },
  { format: 'edl', type: 'text/plain' },
]

/** The files to hand over for the reel on screen, with what each cannot carry. */
export const prepareHandOver = (store: AppStore): readonly HandOver[] => {
  const state = store.getState()
  const job = jobOf(state)
  const { reelId } = state
  if (!job || !reelId) return []
  return FORMATS.flatMap(({ format, type }) => {
    const made = handOverFiles(job, reelId, format)
    if (made.ok) {
      const files = made.value.files.map((file) => ({ ...file, type }))
      return [{ format, files, losses: made.value.losses }]
    }
    tellProblems(store, made.problems)
    return []
  })
}
