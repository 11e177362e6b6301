import { sha256OfText } from '../core/base/sha256.ts'
import { handOverFiles } from '../core/formats/handOverFiles.ts'
import { HAND_OVER_FORMATS } from '../core/formats/handOverFormats.ts'
import { FORMATS_HANDED_OVER, isFileACue } from '../core/formats/prepareFormat.ts'
import type { Job } from '../core/job/job.ts'
import type { ReelId } from '../core/job/recordIds.ts'
import type { ReportedList } from '../core/report/reportFacts.ts'

/**
 * The lists of a reel as they are handed over, with their checksums and losses, for its report.
 * Those that are a file a cue are left out, and those that cannot be written.
 */
export const reportedLists = (job: Job, reelId: ReelId): readonly ReportedList[] =>
  FORMATS_HANDED_OVER.filter((format) => !isFileACue(format)).flatMap((format) => {
    const made = handOverFiles(job, reelId, format)
    if (!made.ok) return []
    const { files, losses } = made.value
    return [
      {
        title: HAND_OVER_FORMATS[format].title,
        files: files.map(({ name, text }) => ({ name, sha256: sha256OfText(text) })),
        losses,
      },
    ]
  })
