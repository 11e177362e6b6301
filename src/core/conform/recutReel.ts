import type { DecisionList } from '../formats/decisionList.ts'
import type { RecutReel } from './planRecut.ts'

/**
 * The new cut of a reel as a list places it: where its record times say, or on the reel's first
 * frame where they lie elsewhere.
 */
export const recutReel = (
  reel: Omit<RecutReel, 'startsAt'>,
  { decisions }: DecisionList,
): RecutReel => {
  const isOnReel = decisions.some(({ recordSpan }) => {
    const first = recordSpan && recordSpan.from - reel.startCount
    return first !== undefined && first >= 0 && first < reel.frames
  })
  return { ...reel, startsAt: isOnReel ? null : 0 }
}
