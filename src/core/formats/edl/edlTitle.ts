import type { Job } from '../../job/job.ts'
import type { ReelId } from '../../job/recordIds.ts'
import { edlReelNameIn } from './edlReelName.ts'
import { cutTo, edlText } from './edlText.ts'

/** The most events a conventional list holds; longer ones are split. */
export const EVENT_LIMIT = 999

/** The longest title of a conventional list. */
export const TITLE_LIMIT = 70

/** The title of one of the lists of a reel: the job's, else the reel's; and which of them it is. */
export const edlTitle = (job: Job, reelId: ReelId, part: number, parts: number): string => {
  const end = parts > 1 ? ` ${part + 1} OF ${parts}` : ''
  const whole =
    edlText(job.info.job.title) ||
    edlText(job.reels[reelId]?.name ?? '') ||
    edlReelNameIn(job, reelId)
  return `${cutTo(whole, TITLE_LIMIT - end.length)}${end}`
}

/** Whether all lists of the reel have the whole title of the job. */
export const isTitleWhole = (job: Job, reelId: ReelId, parts: number): boolean => {
  const title = job.info.job.title.trim()
  return title === '' || edlTitle(job, reelId, parts - 1, parts).startsWith(title)
}
