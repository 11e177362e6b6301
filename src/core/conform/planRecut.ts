import { type Problem, problem } from '../base/problem.ts'
import type { DecisionList } from '../formats/decisionList.ts'
import type { Job, Reel } from '../job/job.ts'
import type { ReelId } from '../job/recordIds.ts'
import { frame } from '../time/frame.ts'
import { isSourceOfReel } from './cueNames.ts'
import { followStretches } from './followStretches.ts'
import { placeSpan } from './placesOnReel.ts'
import type { FoundStretch, ReconformPlan } from './reconformPlan.ts'

/** The new cut of a reel, and where on it the list's first event begins; null: where its times say. */
export type RecutReel = Pick<Reel, 'frames' | 'rate' | 'startCount' | 'isDropFrame'> & {
  readonly startsAt: number | null
}

/**
 * How cues follow a list by which their reel was cut anew: each event's source times lie on the
 * reel as it was, its record times on the new one, and its frames have the grades that they had.
 * Events of other sources, and what no event fills, begin cues of their own. `undefined` where the
 * reel is not in the job.
 */
export const planRecut = (
  job: Job,
  reelId: ReelId,
  list: DecisionList,
  recut: RecutReel,
): ReconformPlan | undefined => {
  const reel = job.reels[reelId]
  if (!reel) return undefined
  const isOfReel = isSourceOfReel(job, reelId)
  const sourceOf = placeSpan(list, reel, 'source', null)
  const recordOf = placeSpan(list, recut, 'record', recut.startsAt)
  const problems: Problem[] = [...list.notTaken]
  const tell = (number: number, line: number | undefined, says: string): void => {
    problems.push(
      problem('conflict', `Event ${number} ${says}`, line === undefined ? undefined : { line }),
    )
  }
  const wanted = list.decisions.flatMap((decision, index) => {
    const [source, record] = [sourceOf(decision), recordOf(decision)]
    const number = index + 1
    if (decision.source !== '' && !isOfReel(decision.source)) return []
    if (!source || !record) {
      tell(number, decision.line, 'states no source or no record times; it is left out.')
      return []
    }
    if (source.to - source.from !== record.to - record.from)
      tell(
        number,
        decision.line,
        'does not last as long as its source; its frames are counted from its first.',
      )
    const shift = record.from - source.from
    const from = Math.max(record.from, 0, shift)
    const to = Math.min(record.to, recut.frames, reel.frames + shift)
    if (from < to) return [{ from, to, shift, number, line: decision.line }]
    tell(number, decision.line, 'lies outside the reel; it is left out.')
    return []
  })
  const stretches: FoundStretch[] = []
  for (const { from, to, shift, number, line } of wanted.toSorted((a, b) => a.from - b.from)) {
    const last = stretches.at(-1)
    if (last && from < last.to)
      tell(number, line, 'overlaps the one before; what overlaps is left out.')
    const begin = Math.max(from, last?.to ?? 0)
    if (begin < to) stretches.push({ from: begin, to, shift, sure: 1, slack: 0, doubt: '' })
  }
  const edges = list.decisions
    .flatMap((decision) => {
      const record = recordOf(decision)
      return record ? [record.from, record.to] : []
    })
    .filter((edge) => edge > 0 && edge < recut.frames)
  const placements = [...new Set(edges)]
    .toSorted((a, b) => a - b)
    .map((first) => ({ first: frame(first), ramp: 0, kind: 'cut', confidence: 1 }) as const)
  return followStretches(job, reel, stretches, recut.frames, placements, problems, 'list')
}
