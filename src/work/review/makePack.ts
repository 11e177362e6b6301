import { cueLook, lookSum } from '../../core/agreement/cueLook.ts'
import type { PackContents, PackCue } from '../../core/agreement/pack/packContents.ts'
import { type Problem, problem } from '../../core/base/problem.ts'
import { codingOf } from '../../core/job/codingOf.ts'
import { cueEnd, cuesOfReel } from '../../core/job/cueList.ts'
import type { Cue, Job, Reel } from '../../core/job/job.ts'
import type { CueId } from '../../core/job/recordIds.ts'
import { reportFrame } from '../../core/report/reportFrame.ts'
import { secondsAt } from '../../core/time/rate.ts'
import { formatTimecode } from '../../core/time/timecode.ts'
import { toleranceOf } from '../../core/tolerance/findProfile.ts'
import type { ReviewPictures, ReviewRequest } from './reviewPictures.ts'

/** What of a reel a review pack is to show. */
export type PackWish = {
  readonly cues: readonly CueId[]
  /** Pixels along the longer side of a picture, at most. */
  readonly size: number
}

/** How pictures are asked for; undefined where the scan is damaged there. */
export type PackSources = {
  readonly pictures: (request: ReviewRequest) => Promise<ReviewPictures | undefined>
  /** A cue in motion, where clips are wanted; null where it could not be made. */
  readonly clip?: (cue: Cue, index: number) => Promise<string | null>
}

/** The size of the pictures of a reel: never larger than the scan is. */
export const packPictureSize = (
  { media }: Reel,
  size: number,
): { readonly width: number; readonly height: number } => {
  const shown = Math.round(media.height * media.displayAspect)
  const scale = Math.min(1, size / Math.max(shown, media.height))
  const side = (pixels: number) => Math.max(1, Math.round(pixels * scale))
  return { width: side(shown), height: side(media.height) }
}

/** The chosen cues as a pack shows them, and those that could not be shown, by number. */
export type PackCues = {
  readonly cues: readonly PackCue[]
  readonly left: readonly Problem[]
}

/**
 * Gathers what a review pack shows of the chosen cues, in the order of the reel. A cue whose picture
 * cannot be read is left out and told. `onCue` is told how many are done.
 */
export const gatherPack = async (
  job: Job,
  reel: Reel,
  wish: PackWish,
  { pictures, clip }: PackSources,
  onCue: (done: number, total: number) => void = () => {},
  signal?: AbortSignal,
): Promise<PackCues> => {
  const all = cuesOfReel(job, reel.id)
  const ground = { reel, cues: all, profile: toleranceOf(job.info.job) }
  const coding = codingOf(reel)
  const wanted = new Set(wish.cues)
  const size = packPictureSize(reel, wish.size)
  const packed: PackCue[] = []
  const left: Problem[] = []
  const total = all.filter(({ id }) => wanted.has(id)).length
  for (const [index, cue] of all.entries()) {
    if (!wanted.has(cue.id)) continue
    signal?.throwIfAborted()
    const end = cueEnd(all, index, reel.frames)
    const frame = reportFrame(cue, all[index - 1], end)
    const look = cueLook(ground, index)
    const { grade, framing, alternates } = cue
    const request = { frame, coding, grade, framing, ...size }
    const made = await pictures({ ...request, alternates: alternates.map((each) => each.grade) })
    if (made && look)
      packed.push({
        ...{ cue: cue.id, number: index + 1, scene: cue.scene },
        timecode: formatTimecode(reel.startCount + cue.first, reel.rate, reel.isDropFrame),
        seconds: secondsAt(end - cue.first, reel.rate),
        ...{ look, sha256: lookSum(look), frame, before: made.before, after: made.after },
        alternates: alternates.map((each, place) => {
          const other = cueLook(ground, index, each.grade) ?? look
          const picture = made.alternates[place] ?? made.after
          return { name: each.name, grade: each.grade, sha256: lookSum(other), picture }
        }),
        clip: clip ? await clip(cue, index) : null,
      })
    else
      left.push(
        problem('cannot-decode', `Cue ${index + 1} is left out: its picture cannot be read.`, {
          frame,
        }),
      )
    onCue(packed.length + left.length, total)
  }
  return { cues: packed, left }
}

/** A pack of these cues, with what it is told by. */
export const packContents = (
  job: Job,
  reel: Reel,
  cues: readonly PackCue[],
  particulars: Pick<PackContents, 'id' | 'madeAt' | 'madeFor' | 'key'>,
): PackContents => ({
  ...{ format: 'reelwright-pack', version: 1, ...particulars },
  title: job.info.job.title,
  reel: { id: reel.id, name: reel.name },
  cues,
})
