import type { CensusData } from '../core/census/censusData.ts'
import type { Grade } from '../core/colour/grade.ts'
import { codingOf } from '../core/job/codingOf.ts'
import type { Cue, Job, Reel } from '../core/job/job.ts'
import { IDENTITY_FRAMING, sameFraming } from '../core/picture/framing.ts'
import { broughtInsideWords, type Unsettled } from '../core/solve/changeWords.ts'
import { type Frame, frame } from '../core/time/frame.ts'
import type { Verdict } from '../core/tolerance/verdict.ts'
import { cuesOf, endOfCue, previousCue, profileOf } from '../store/queries.ts'
import type { AppState } from '../store/state.ts'
import { type Found, foundNone, nothingFound } from './proposalRun.ts'
import type { Workers } from './workers.ts'

export type InsideTask = {
  readonly state: AppState
  readonly job: Job
  readonly reel: Reel
  readonly cue: Cue
  readonly census: CensusData
  /** The frame with most outside as the cue is, where that was measured. */
  readonly worstFrame: Frame | undefined
}

/** Frames spread over the cue that are measured with what was found. */
const MEASURED = 24

/** How often another share is aimed at, so that the worst frame just passes. */
const MOST_ROUNDS = 4

/** A little below what the worst frame is to have, so that it is not just missed. */
const SPARE = 0.8

/** Where the worst frame has this part of what it may, no smaller change is looked for. */
const CLOSE = 0.6

const framesOf = ({ cue, worstFrame }: InsideTask, end: Frame): readonly Frame[] => {
  const first = Math.min(end - 1, cue.first + cue.ramp)
  const count = Math.min(MEASURED, end - first)
  const spread = Array.from({ length: count }, (_, i) =>
    Math.floor(first + ((i + 0.5) / count) * (end - first)),
  )
  const all = worstFrame !== undefined && worstFrame >= first ? [...spread, worstFrame] : spread
  return [...new Set(all)].sort((a, b) => a - b).map(frame)
}

/**
 * Looks for the smallest change that makes a cue pass. The solver goes by the share of all its
 * pixels; the verdict, by the worst frame, after a filter. So some frames are measured with what was
 * found, and where one has too much, a smaller share is aimed at.
 */
export const lookForInside = async (
  task: InsideTask,
  workers: Pick<Workers, 'stills' | 'solve'>,
  signal: AbortSignal,
): Promise<Found> => {
  const { state, job, reel, cue, census } = task
  const profile = profileOf(job)
  const cues = cuesOf(state)
  const previous = previousCue(cues, cue)
  const end = endOfCue(cues, cue, reel)
  const frames = framesOf(task, end)
  const measure = (grade: Grade): Promise<Verdict | undefined> =>
    workers.stills(
      'checkFrames',
      { check: { cue: { ...cue, grade }, previous, end }, coding: codingOf(reel), profile, frames },
      { signal },
    )
  /** What was found aiming at a share of all pixels, and what of frames is outside with it. */
  const tryAim = async (aim: number) => {
    const solved = await workers.solve(
      'bringInside',
      { census, grade: cue.grade, profile: { ...profile, area: aim } },
      { signal },
    )
    return { aim, solved, worst: solved.ok ? await measure(solved.value.grade) : undefined }
  }
  let best = await tryAim(profile.area)
  let [tooLittle, tooMuch] = [0, profile.area]
  for (let round = 1; round < MOST_ROUNDS && profile.area > 0; round++) {
    if (!best.worst || (best.worst.isInside && best.aim === profile.area)) break
    const { isInside, areaOutside } = best.worst
    if (isInside && areaOutside > CLOSE * profile.area) break
    const proportional = (SPARE * best.aim * profile.area) / areaOutside
    const isBetween = proportional > tooLittle && proportional < tooMuch
    const next = await tryAim(isBetween ? proportional : Math.sqrt(tooLittle * tooMuch))
    if (!next.solved.ok) break
    if (next.worst?.isInside) tooLittle = next.aim
    else tooMuch = next.aim
    if (next.worst?.isInside || !best.worst.isInside) best = next
  }
  if (!best.solved.ok) return foundNone(best.solved.problems)
  const { grade, changed } = best.solved.value
  const unsettled: Unsettled = {
    profileName: profile.name,
    area: profile.area,
    ...(best.worst && { worst: { part: best.worst.areaOutside, frames: frames.length } }),
    isFiltered: profile.filtered,
    isRamped: cue.ramp > 0 && previous !== undefined,
    isFramed: !sameFraming(cue.framing, IDENTITY_FRAMING),
  }
  const says = broughtInsideWords(best.solved.value, unsettled)
  return changed.length === 0
    ? nothingFound(...says)
    : { says, change: { kind: 'grade', cue: cue.id, grade } }
}
