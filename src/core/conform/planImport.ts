import { type Problem, problem } from '../base/problem.ts'
import type { DecisionList } from '../formats/decisionList.ts'
import { cuesOfReel } from '../job/cueList.ts'
import type { Job, Reel } from '../job/job.ts'
import { REEL_FOREIGN_LIMIT } from '../job/limits.ts'
import type { ReelId } from '../job/recordIds.ts'
import { frame } from '../time/frame.ts'
import { framesPerSecond, sameRate } from '../time/rate.ts'
import { foreignNotKept, foreignWithin } from './checkDecision.ts'
import { giveGrades } from './giveGrades.ts'
import type { ImportOptions, ImportPlan } from './importPlan.ts'
import { importWishes } from './importWishes.ts'
import { takePlaces } from './takePlaces.ts'

/** Tells once of frames between the record times of a list that no decision is about. */
const gapsOf = (list: DecisionList): readonly Problem[] => {
  const spans = list.decisions
    .flatMap(({ recordSpan }) =>
      recordSpan && recordSpan.to >= recordSpan.from ? [recordSpan] : [],
    )
    .toSorted((a, b) => a.from - b.from)
  let gaps = 0
  let frames = 0
  let end = spans[0]?.from ?? 0
  for (const { from, to } of spans) {
    if (from > end) {
      gaps++
      frames += from - end
    }
    end = Math.max(end, to)
  }
  if (gaps === 0) return []
  const says = `The list leaves ${gaps === 1 ? 'a gap' : `${gaps} gaps`}, ${frames} frame${frames === 1 ? '' : 's'} in all; no cue begins there, the cue before goes on.`
  return [problem('not-stated', says)]
}

const rateProblem = ({ rate }: DecisionList, reel: Reel): readonly Problem[] => {
  if (!rate || sameRate(rate, reel.rate)) return []
  const words = (each: Reel['rate']): string => `${Number(framesPerSecond(each).toFixed(3))}`
  return [
    problem(
      'conflict',
      `The list counts ${words(rate)} frames a second, the reel ${words(reel.rate)}; a frame of the list is taken as a frame of the reel.`,
    ),
  ]
}

/**
 * What importing a list into a reel would do, decision by decision, without doing it. A decision
 * with a transition begins where its times begin: on the transition's first frame; a ramp is
 * taken only where the list states one. Values past what a job holds make a conflict.
 */
export const planImport = (
  job: Job,
  reelId: ReelId,
  list: DecisionList,
  options: ImportOptions,
): ImportPlan => {
  const reel = job.reels[reelId]
  if (!reel)
    return {
      format: list.format,
      options,
      rows: [],
      untouched: [],
      notTaken: [problem('not-found', 'This reel is not in the job; choose another.')],
      foreign: [],
    }
  const cues = cuesOfReel(job, reelId)
  const wishes = importWishes(job, reel, list, options)
  const fates = options.takesPlaces
    ? takePlaces(wishes, cues, reel.frames, options.matchBy === 'order')
    : giveGrades(wishes, cues, reel.frames)
  const touched = new Set(fates.map(({ cue }) => cue))
  const foreign = foreignWithin(list.foreign, REEL_FOREIGN_LIMIT)
  const countsGaps = options.takesPlaces && options.matchBy !== 'name' && options.times === 'record'
  return {
    format: list.format,
    options,
    rows: fates.map(({ outcome, cue, first, says }, index) => ({
      number: index + 1,
      decision: list.decisions[index] as DecisionList['decisions'][number],
      outcome,
      cue: cue === undefined ? undefined : cues[cue],
      first: first === undefined ? undefined : frame(first),
      says,
    })),
    untouched: cues.flatMap((_, index) => (touched.has(index) ? [] : [index + 1])),
    notTaken: [
      ...list.notTaken,
      ...rateProblem(list, reel),
      ...(countsGaps ? gapsOf(list) : []),
      ...foreignNotKept(list.decisions),
      ...(foreign.length < list.foreign.length
        ? [problem('too-large', 'The list says more of itself than a job keeps; that is left out.')]
        : []),
    ],
    foreign,
  }
}
