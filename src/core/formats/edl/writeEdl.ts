import { problem } from '../../base/problem.ts'
import { fail, ok, type Result } from '../../base/result.ts'
import { gradeToCdl } from '../../colour/cdl.ts'
import type { Triple } from '../../colour/triple.ts'
import { cueEnd, cuesOfReel } from '../../job/cueList.ts'
import type { Cue, Job, Reel } from '../../job/job.ts'
import type { ReelId } from '../../job/recordIds.ts'
import { nominalFramesPerSecond } from '../../time/rate.ts'
import { canDropFrames, formatTimecode } from '../../time/timecode.ts'
import { fileNameOf } from '../listNames.ts'
import { edlDecimal } from './edlDecimal.ts'
import { edlReelNameIn } from './edlReelName.ts'
import { edlText } from './edlText.ts'
import { EVENT_LIMIT, TITLE_LIMIT } from './lossesEdl.ts'

const group = (t: Triple): string => `(${t.map(edlDecimal).join(' ')})`

/** Counting mode; 625/50 and 24-frame lists have none. */
const countingMode = ({ rate, isDropFrame }: Reel): string[] => {
  if (nominalFramesPerSecond(rate) % 30 !== 0) return []
  const drops = isDropFrame && canDropFrames(rate)
  return [`FCM: ${drops ? 'DROP FRAME' : 'NON-DROP FRAME'}`]
}

type Event = {
  readonly reel: Reel
  readonly reelName: string
  readonly cue: Cue
  readonly end: number
  readonly number: number
  readonly cueNumber: number
}

/**
 * A cue's event line and its comments. The note has a word before it, so that a note such as
 * `ASC_SAT 2` is never taken for the grade.
 */
const eventLines = ({ reel, reelName, cue, end, number, cueNumber }: Event): string[] => {
  const label = (frame: number): string =>
    formatTimecode(reel.startCount + frame, reel.rate, reel.isDropFrame).replace(';', ':')
  const cueIn = label(cue.first)
  const cueOut = label(end)
  const { slope, offset, power, saturation } = gradeToCdl(cue.grade)
  const note = edlText(cue.note)
  return [
    `${String(number).padStart(3, '0')}  ${reelName.padEnd(8)} V     C        ${cueIn} ${cueOut} ${cueIn} ${cueOut}`,
    `* FROM CLIP NAME: ${edlText(reel.name)} CUE ${String(cueNumber).padStart(4, '0')}`,
    `* ASC_SOP ${group(slope)}${group(offset)}${group(power)}`,
    `* ASC_SAT ${edlDecimal(saturation)}`,
    ...(cue.ramp > 0 ? [`* RAMP ${String(cue.ramp).padStart(3, '0')} FRAMES`] : []),
    ...(note === '' ? [] : [`* NOTE: ${note}`]),
  ]
}

/**
 * A reel's cues as conventional event lines (facts/edl.md §1–2): one cut an event, source and
 * record times alike, the grade in ASC_SOP and ASC_SAT comments. 7-bit ASCII, CR LF. More than
 * 999 cues make several lists.
 */
export const writeEdl = (
  job: Job,
  reelId: ReelId,
): Result<{ readonly files: readonly { readonly name: string; readonly text: string }[] }> => {
  const reel = job.reels[reelId]
  if (!reel) return fail(problem('not-found', 'This reel is not in the job; choose another.'))
  const cues = cuesOfReel(job, reelId)
  const reelName = edlReelNameIn(job, reelId)
  const parts = Math.max(1, Math.ceil(cues.length / EVENT_LIMIT))
  const files = Array.from({ length: parts }, (_, part) => {
    const from = part * EVENT_LIMIT
    const suffix = parts > 1 ? ` ${part + 1} OF ${parts}` : ''
    const whole = edlText(job.info.job.title) || edlText(reel.name)
    const title = whole.slice(0, TITLE_LIMIT - suffix.length).trimEnd()
    const lines = [
      `TITLE: ${title}${suffix}`,
      ...countingMode(reel),
      '',
      ...cues.slice(from, from + EVENT_LIMIT).flatMap((cue, i) =>
        eventLines({
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
