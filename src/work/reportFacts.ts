import type { Grade } from '../core/colour/grade.ts'
import { codingOf } from '../core/job/codingOf.ts'
import { cueEnd, cuesOfReel } from '../core/job/cueList.ts'
import type { Cue, HeldFrame, Job, Reel } from '../core/job/job.ts'
import type { CueId, HeldId } from '../core/job/recordIds.ts'
import type { Framing } from '../core/picture/framing.ts'
import { type CueFacts, type FramePictures, MOST_PICTURED } from '../core/report/reportFacts.ts'
import { reportFrame } from '../core/report/reportFrame.ts'
import type { Frame } from '../core/time/frame.ts'
import type { Verdict } from '../core/tolerance/verdict.ts'
import type { PicturesRequest } from './framePictures.ts'

/** Pixels across a picture of a report; fewer where there are many, so that the file stays handy. */
const WIDTH = 240
const WIDTH_OF_MANY = 160
const MANY = 250

/** How a report is asked for what it shows; each may be refused by rejecting. */
export type ReportSources = {
  /** The pictures of a frame; undefined where it cannot be read. */
  readonly pictures: ((request: PicturesRequest) => Promise<FramePictures | undefined>) | undefined
  /** The verdict on a cue by its place among the reel's; undefined where it is not measured. */
  readonly verdict: (index: number) => Verdict | undefined | Promise<Verdict | undefined>
}

export type PicturesAndVerdicts = {
  readonly cues: ReadonlyMap<CueId, CueFacts>
  readonly held: ReadonlyMap<HeldId, string>
}

/**
 * Gathers the pictures and verdicts of a reel's report, cue by cue, then its held frames. At most
 * `MOST_PICTURED` cues get pictures. `onCue` is told how many cues are done.
 */
export const gatherReport = async (
  job: Job,
  reel: Reel,
  { pictures, verdict }: ReportSources,
  onCue: (done: number, total: number) => void = () => {},
  signal?: AbortSignal,
): Promise<PicturesAndVerdicts> => {
  const cues = cuesOfReel(job, reel.id)
  const coding = codingOf(reel)
  const width = cues.length > MANY ? WIDTH_OF_MANY : WIDTH
  const height = Math.max(1, Math.round(width / reel.media.displayAspect))
  const picturesAt = async (
    frame: Frame,
    { grade, framing }: { readonly grade: Grade; readonly framing: Framing },
  ): Promise<FramePictures | undefined> =>
    pictures?.({ frame, coding, grade, framing, width, height })
  const factsOf = async (cue: Cue, index: number): Promise<CueFacts> => {
    const at = reportFrame(cue, cues[index - 1], cueEnd(cues, index, reel.frames))
    return {
      pictures: index < MOST_PICTURED ? await picturesAt(at, cue) : undefined,
      verdict: await verdict(index),
    }
  }
  const gathered = new Map<CueId, CueFacts>()
  for (const [index, cue] of cues.entries()) {
    signal?.throwIfAborted()
    gathered.set(cue.id, await factsOf(cue, index))
    onCue(index + 1, cues.length)
  }
  const held = new Map<HeldId, string>()
  for (const each of Object.values<HeldFrame>(job.held)) {
    signal?.throwIfAborted()
    if (each.reel !== reel.id) continue
    const shown = await picturesAt(each.frame, each)
    if (shown) held.set(each.id, shown.graded)
  }
  return { cues: gathered, held }
}
