import { gradeToCdl } from '../../colour/cdl.ts'
import { cuesOfReel } from '../../job/cueList.ts'
import type { Job } from '../../job/job.ts'
import type { ReelId } from '../../job/recordIds.ts'
import { cueWords, numbersWhere, sharedLosses } from '../sharedLosses.ts'
import { edlDecimal } from './edlDecimal.ts'
import { edlReelNameIn } from './edlReelName.ts'
import { edlText } from './edlText.ts'

/** The most events a conventional list holds; longer ones are split. */
export const EVENT_LIMIT = 999

/** The longest title of a conventional list. */
export const TITLE_LIMIT = 70

/** What an edit decision list cannot carry of this reel, one sentence each. */
export const lossesEdl = (job: Job, reelId: ReelId): readonly string[] => {
  const reel = job.reels[reelId]
  if (!reel) return []
  const cues = cuesOfReel(job, reelId)
  const losses: string[] = []
  const rounded = numbersWhere(cues, ({ grade }) => {
    const cdl = gradeToCdl(grade)
    const values = [...cdl.slope, ...cdl.offset, ...cdl.power, cdl.saturation]
    return values.some((value) => Number(edlDecimal(value)) !== value)
  })
  if (rounded.length > 0)
    losses.push(
      `More than six decimals: the numbers of ${cueWords(rounded)} are rounded. The ASC CDL collection has them exactly.`,
    )
  const name = edlReelNameIn(job, reelId)
  if (name !== reel.name)
    losses.push(
      `The reel's full name “${reel.name}”: the event lines say ${name}, a comment has the rest.`,
    )
  const { title } = job.info.job
  if (edlText(title) !== title.trim() || edlText(title).length > TITLE_LIMIT)
    losses.push(
      `The whole title: a list takes ${TITLE_LIMIT} characters of plain ASCII, fewer where it is split.`,
    )
  const reworded = numbersWhere(cues, ({ note }) => edlText(note) !== note.trim())
  if (reworded.length > 0)
    losses.push(`Letters outside ASCII and line breaks in the note of ${cueWords(reworded)}.`)
  if (cues.length > EVENT_LIMIT)
    losses.push(
      `One list: at most ${EVENT_LIMIT} events fit, so there are ${Math.ceil(cues.length / EVENT_LIMIT)}.`,
    )
  return [...losses, ...sharedLosses(job, reelId)]
}
