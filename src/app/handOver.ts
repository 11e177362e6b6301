import { handOverFiles } from '../core/formats/handOverFiles.ts'
import { HAND_OVER_FORMATS, type HandOverFormat } from '../core/formats/handOverFormats.ts'
import type { AppStore } from '../store/appStore.ts'
import { tellProblems } from '../store/notices.ts'
import { jobOf } from '../store/queries.ts'
import type { HandOver } from '../ui/services.ts'

const FORMATS = Object.keys(HAND_OVER_FORMATS) as readonly HandOverFormat[]

/** The files to hand over for the reel on screen, with what each cannot carry. */
export const prepareHandOver = (store: AppStore): readonly HandOver[] => {
  const state = store.getState()
  const job = jobOf(state)
  const { reelId } = state
  if (!job || !reelId) return []
  return FORMATS.flatMap((format) => {
    const made = handOverFiles(job, reelId, format)
    if (made.ok) {
      const files = made.value.files.map((file) => ({
        ...file,
        type: HAND_OVER_FORMATS[format].mediaType,
      }))
      return [{ format, files, losses: made.value.losses }]
    }
    tellProblems(store, made.problems)
    return []
  })
}
