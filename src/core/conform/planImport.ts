import { type Problem, problem } from '../base/problem.ts'
import type { DecisionList } from '../formats/decisionList.ts'
import { cuesOfReel } from '../job/cueList.ts'
import type { Cue, Job, Reel } from '../job/job.ts'
import type { ReelId } from '../job/recordIds.ts'
import { frame } from '../time/frame.ts'
import { framesPerSecond, sameRate } from '../time/rate.ts'
import { canDropFrames } from '../time/timecode.ts'
import { foreignNotKept } from './checkDecision.ts'
import { isSourceOfReel } from './cueNames.ts'
import { changesOfRow } from './cueWithDecision.ts'
import { giveGrades } from './giveGrades.ts'
import type { ImportOptions, ImportPlan, ImportRow } from './importPlan.ts'
import { type ImportWish, importWishes, isBlack } from './importWishes.ts'
import { keptWithin } from './keptWithin.ts'
import { takePlaces } from './takePlaces.ts'
import { tellEnd, tellGaps, tellOverlaps } from './tellSpans.ts'

/** Tells once that a list counts otherwise than the reel. */
const rateProblem = ({ rate, isDropFrame }: DecisionList, reel: Reel): readonly Problem[] => {
  if (!rate || sameRate(rate, reel.rate)) {
    const drops = isDropFrame ?? reel.isDropFrame
    if (drops === reel.isDropFrame || !canDropFrames(reel.rate)) return []
    const says = `The list’s timecode is ${drops ? 'drop-frame' : 'non-drop'}, the reel’s ${drops ? 'non-drop' : 'drop-frame'}; the reel’s first label is the same in both, and from there a frame is a frame.`
    return [problem('conflict', says)]
  }
  const words = (each: Reel['rate']): string => `${Number(framesPerSecond(each).toFixed(3))}`
  return [
    problem(
      'conflict',
      `The list counts ${words(rate)} frames a second, the reel ${words(reel.rate)}; a frame of the list is taken as a frame of the reel.`,
    ),
  ]
}

/** Whether a source is not named: AX is the conventional word for any that has no reel. */
const isUnnamed = (source: string): boolean => /^(ax)?$/iu.test(source)

/** Tells once that a list was made of another scan: each of its sources is named, none is the reel. */
const otherScan = (job: Job, reel: Reel, { decisions }: DecisionList): readonly Problem[] => {
  const isOfReel = isSourceOfReel(job, reel.id)
  const sources = new Set(
    decisions.filter(({ source }) => !isBlack(source)).map(({ source }) => source.trim()),
  )
  const [first, ...others] = sources
  if (!first || [...sources].some((source) => isUnnamed(source) || isOfReel(source))) return []
  const more = others.length === 0 ? '' : ` and ${others.length} more`
  return [problem('conflict', `The list names “${first}”${more}, not this reel.`)]
}

/** Tells of frames of the reel that decisions leave out, or that several of them are about. */
const spansTold = (
  rows: readonly Omit<ImportRow, 'changes'>[],
  wishes: readonly ImportWish[],
  cues: readonly Cue[],
  reel: Reel,
  { format }: DecisionList,
  { takesPlaces, matchBy, times }: ImportOptions,
): readonly Problem[] => {
  // Of ASC CDL only beginnings are known, and a list by name may be of other reels as well.
  if (!takesPlaces || format === 'cdl') return []
  const spans = wishes.flatMap(({ span }) => (span ? [span] : []))
  const taken = rows.flatMap(({ outcome }, index) => {
    const span = wishes[index]?.span
    return span && outcome !== 'conflicts' && outcome !== 'passed-over' ? [span] : []
  })
  const overlaps = tellOverlaps(taken, reel.frames)
  if (matchBy === 'name' || times !== 'record') return overlaps
  const about = new Set(rows.map(({ cue }) => cue))
  const staying = cues.flatMap((cue, index) =>
    about.has(cue) ? [] : [{ number: index + 1, first: cue.first }],
  )
  return [...tellGaps(spans, reel.frames), ...overlaps, ...tellEnd(taken, reel.frames, staying)]
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
  const placed = fates.map(({ outcome, cue, first, says }, index) => ({
    number: index + 1,
    decision: list.decisions[index] as DecisionList['decisions'][number],
    outcome,
    cue: cue === undefined ? undefined : cues[cue],
    first: first === undefined ? undefined : frame(first),
    says,
  }))
  const { rows, foreign, notKept } = keptWithin(job, reel, list.foreign, placed)
  const taking = { format: list.format, options }
  return {
    ...taking,
    rows: rows.map((row) => ({ ...row, changes: changesOfRow(row, cues, reelId, taking) })),
    untouched: cues.flatMap((_, index) => (touched.has(index) ? [] : [index + 1])),
    notTaken: [
      ...list.notTaken,
      ...rateProblem(list, reel),
      ...(options.matchBy === 'name' ? [] : otherScan(job, reel, list)),
      ...spansTold(placed, wishes, cues, reel, list, options),
      ...foreignNotKept(list.decisions),
      ...notKept,
    ],
    foreign,
  }
}
