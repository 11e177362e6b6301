import { stillFileName } from '../core/formats/stillFileName.ts'
import { STILL_FORMATS } from '../core/formats/stillFormats.ts'
import { codingOf } from '../core/job/codingOf.ts'
import { formatTimecode } from '../core/time/timecode.ts'
import type { AppStore } from '../store/appStore.ts'
import { tell } from '../store/notices.ts'
import { cueAtFrame, cueIndex, cuesOf, reelOf, valuesAtFrame } from '../store/queries.ts'
import type { StillChoice } from '../ui/services.ts'
import type { StillFileRequest } from '../work/makeStillFile.ts'
import { tellError } from './tellError.ts'
import type { Workers } from './workers.ts'

type SaveFile = (name: string, make: () => Promise<Blob>) => Promise<boolean>

const clippedWords = (clipped: number): string =>
  clipped === 0
    ? ''
    : ` ${clipped} ${clipped === 1 ? 'pixel lay' : 'pixels lay'} past black or peak white and ${clipped === 1 ? 'was' : 'were'} clipped there.`

/**
 * Saves the frame under the line as a picture file, made in a worker once the person has said
 * where. What is in force on the frame counts, not what is only proposed.
 */
export const createStillSaving =
  (store: AppStore, workers: Pick<Workers, 'stills'>, saveFile: SaveFile) =>
  async ({ stage, format }: StillChoice): Promise<void> => {
    const state = store.getState()
    const reel = reelOf(state)
    const frame = state.playhead
    const cue = cueAtFrame(state, frame)
    const values = valuesAtFrame(state, frame)
    if (!reel || !cue || !values || state.media !== 'ready') return
    const { rate, isDropFrame, startCount } = reel
    const name = stillFileName(reel, cueIndex(cuesOf(state), cue) + 1, frame, stage, format)
    const timecode = formatTimecode(startCount + frame, rate, isDropFrame)
    const request: StillFileRequest = {
      frame,
      coding: codingOf(reel),
      values: stage === 'graded' ? { grade: values.grade, framing: values.framing } : undefined,
      format,
      words: { name, rate, timecode },
    }
    let clipped = 0
    try {
      const isSaved = await saveFile(name, async () => {
        const made = await workers.stills('stillFile', request)
        clipped = made.clipped
        return new Blob([made.bytes], { type: STILL_FORMATS[format].mediaType })
      })
      if (isSaved) tell(store, `Saved ${name}.${clippedWords(clipped)}`)
    } catch (error) {
      tellError(store, error)
    }
  }
