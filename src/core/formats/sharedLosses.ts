import { isPlainBase } from '../film/filmBase.ts'
import { cuesOfReel } from '../job/cueList.ts'
import type { Cue, HeldFrame, Job } from '../job/job.ts'
import type { ReelId } from '../job/recordIds.ts'
import { IDENTITY_FRAMING, sameFraming } from '../picture/framing.ts'

const SHOWN = 12

/** Cue numbers in words: `cue 4`, `cues 2, 5 and 9`, or a count where there are many. */
export const cueWords = (numbers: readonly number[]): string => {
  if (numbers.length === 1) return `cue ${numbers[0]}`
  if (numbers.length > SHOWN) return `${numbers.length} cues`
  return `cues ${numbers.slice(0, -1).join(', ')} and ${numbers.at(-1)}`
}

/** The numbers of the cues for which something holds. */
export const numbersWhere = (
  cues: readonly Cue[],
  holds: (cue: Cue) => boolean,
): readonly number[] => cues.flatMap((cue, index) => (holds(cue) ? [index + 1] : []))

/** What neither an ASC CDL collection nor an edit decision list can carry of this reel. */
export const sharedLosses = (job: Job, reelId: ReelId): readonly string[] => {
  const cues = cuesOfReel(job, reelId)
  const losses: string[] = []
  const reel = job.reels[reelId]
  if (reel && !isPlainBase(reel.base))
    losses.push(
      'The base, which makes video of the scan: the grades are right only on the picture after it.',
    )
  const framed = numbersWhere(cues, ({ framing }) => !sameFraming(framing, IDENTITY_FRAMING))
  if (framed.length > 0) losses.push(`The framing of ${cueWords(framed)}.`)
  const ramped = numbersWhere(cues, ({ ramp }) => ramp > 0)
  if (ramped.length > 0)
    losses.push(
      `The ramp of ${cueWords(ramped)}: a reader changes the grade on the cue's first frame.`,
    )
  const alternates = numbersWhere(cues, (cue) => cue.alternates.length > 0)
  if (alternates.length > 0)
    losses.push(`The alternates of ${cueWords(alternates)}: only the grade in force goes out.`)
  const marked = numbersWhere(cues, ({ scene }) => scene !== '')
  if (marked.length > 0) losses.push(`The scene mark of ${cueWords(marked)}.`)
  const held = Object.values<HeldFrame>(job.held).filter((each) => each.reel === reelId).length
  if (held > 0) losses.push(held === 1 ? 'The held frame.' : `The ${held} held frames.`)
  const settled = numbersWhere(cues, ({ agreement }) => agreement !== 'open')
  if (settled.length > 0) losses.push(`The agreement on ${cueWords(settled)}.`)
  losses.push('The tolerance the job is held to, and the particulars of the reel and its scan.')
  return losses
}
