import { problem } from '../../base/problem.ts'
import { fail, ok, type Result } from '../../base/result.ts'
import { cueEnd, cuesOfReel } from '../../job/cueList.ts'
import { foreignOf } from '../../job/foreignOf.ts'
import type { Job, Reel } from '../../job/job.ts'
import type { ReelId } from '../../job/recordIds.ts'
import { nominalFramesPerSecond } from '../../time/rate.ts'
import { canDropFrames, framesPerDay } from '../../time/timecode.ts'
import { fileNameOf } from '../listNames.ts'
import { commentLines, edlEventLines } from './edlEventLines.ts'
import { readEdlForeign } from './edlForeign.ts'
import { HEADER_WORDS } from './edlHeader.ts'
import { edlReelNameIn } from './edlReelName.ts'
import { edlText } from './edlText.ts'
import { EVENT_LIMIT, edlTitle } from './edlTitle.ts'

/** Labels have two digits of frames. */
const FASTEST = 100

/** Counting mode; 625/50 and 24-frame lists have none. */
const countingMode = ({ rate, isDropFrame }: Reel): readonly string[] => {
  if (nominalFramesPerSecond(rate) % 30 !== 0) return []
  const drops = isDropFrame && canDropFrames(rate)
  return [`FCM: ${drops ? 'DROP FRAME' : 'NON-DROP FRAME'}`]
}

const rateComment = ({ rate: { num, den } }: Reel): string =>
  `* ${HEADER_WORDS.rate} ${num}${den === 1 ? '' : `/${den}`}`

/** What the list that the reel's cues were read from said as a whole. */
const earlierLines = (reel: Reel, title: string): readonly string[] => {
  const earlier = readEdlForeign(foreignOf(reel.foreign, 'edl') ?? '')
  const before = edlText(earlier.title ?? '')
  return [
    ...(before === '' || before === title ? [] : [`* ${HEADER_WORDS.earlier} ${before}`]),
    ...commentLines(earlier.comments),
  ]
}

const checkReel = (reel: Reel | undefined): Result<Reel> => {
  if (!reel) return fail(problem('not-found', 'This reel is not in the job; choose another.'))
  if (nominalFramesPerSecond(reel.rate) > FASTEST)
    return fail(
      problem(
        'out-of-range',
        `The times of an edit decision list count up to ${FASTEST} frames a second, and this reel has more; hand it over in another format.`,
      ),
    )
  if (reel.frames > framesPerDay(reel.rate, reel.isDropFrame))
    return fail(
      problem(
        'too-large',
        'This reel is longer than the 24 hours that the times of an edit decision list can tell apart; hand it over in another format.',
      ),
    )
  return ok(reel)
}

/**
 * A reel's cues as conventional event lines (facts/edl.md §1–2): one cut an event, source and
 * record times alike, the grade in ASC_SOP and ASC_SAT comments, ramp and note in comments of our
 * own, and what other lists said in comments again. 7-bit ASCII, CR LF. More than 999 cues make
 * several lists. Refused at more than 100 frames a second, and of reels over 24 hours.
 */
export const writeEdl = (
  job: Job,
  reelId: ReelId,
): Result<{ readonly files: readonly { readonly name: string; readonly text: string }[] }> => {
  const checked = checkReel(job.reels[reelId])
  if (!checked.ok) return checked
  const reel = checked.value
  const cues = cuesOfReel(job, reelId)
  const reelName = edlReelNameIn(job, reelId)
  const parts = Math.max(1, Math.ceil(cues.length / EVENT_LIMIT))
  const files = Array.from({ length: parts }, (_, part) => {
    const from = part * EVENT_LIMIT
    const title = edlTitle(job, reelId, part, parts)
    const lines = [
      `TITLE: ${title}`,
      ...countingMode(reel),
      rateComment(reel),
      ...(part === 0 ? earlierLines(reel, title) : []),
      '',
      ...cues.slice(from, from + EVENT_LIMIT).flatMap((cue, i) =>
        edlEventLines({
          reel,
          reelName,
          cue,
          end: cueEnd(cues, from + i, reel.frames),
          number: i + 1,
          cueNumber: from + i + 1,
        }),
      ),
    ]
    const name = `${fileNameOf(reel)}${parts > 1 ? `-${part + 1}` : ''}.edl`
    return { name, text: `${lines.join('\r\n')}\r\n` }
  })
  return ok({ files })
}
