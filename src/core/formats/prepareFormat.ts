import type { Problem } from '../base/problem.ts'
import { cuesOfReel } from '../job/cueList.ts'
import type { Job } from '../job/job.ts'
import type { ReelId } from '../job/recordIds.ts'
import { handOverFiles, handOverLosses } from './handOverFiles.ts'
import { type FormatFacts, HAND_OVER_FORMATS, type HandOverFormat } from './handOverFormats.ts'
import type { Loss } from './loss.ts'
import { lossStatement } from './lossStatement.ts'

/** What a reel would be handed over as in one format. */
export type PreparedFormat = {
  readonly format: HandOverFormat
  /** Names of its files; none are listed where there is a file a cue. */
  readonly names: readonly string[]
  readonly losses: readonly Loss[]
  /** Why it cannot be written; none where it can. */
  readonly problems: readonly Problem[]
}

/** Every format a reel is handed over as, in the order they are offered. */
export const FORMATS_HANDED_OVER = Object.keys(HAND_OVER_FORMATS) as readonly HandOverFormat[]

/** Whether a format makes a file of each cue. */
export const isFileACue = (format: HandOverFormat): boolean => {
  const facts: FormatFacts = HAND_OVER_FORMATS[format]
  return facts.isFileACue ?? false
}

/** What would be handed over in a format, without keeping the text of its files. */
export const prepareFormat = (job: Job, reelId: ReelId, format: HandOverFormat): PreparedFormat => {
  const losses = handOverLosses(job, reelId, format)
  if (isFileACue(format)) return { format, names: [], losses, problems: [] }
  const made = handOverFiles(job, reelId, format)
  return made.ok
    ? { format, names: made.value.files.map(({ name }) => name), losses, problems: [] }
    : { format, names: [], losses, problems: made.problems }
}

/** The statement of losses of a whole hand-over; what could not be written is not in it. */
export const handOverStatement = (
  job: Job,
  reelId: ReelId,
  prepared: readonly PreparedFormat[],
): string =>
  lossStatement(
    job,
    reelId,
    prepared
      .filter(({ problems }) => problems.length === 0)
      .map(({ format, names, losses }) => ({
        title: HAND_OVER_FORMATS[format].title,
        files: isFileACue(format) ? [`${cuesOfReel(job, reelId).length} files, one a cue`] : names,
        losses,
      })),
  )
