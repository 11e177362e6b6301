import { type Problem, problem } from '../../base/problem.ts'
import { framesPerDay, parseTimecode } from '../../time/timecode.ts'
import type { ListTiming, Span } from '../decisionList.ts'

/** Where a correction of ours says that its cue begins. */
export type OwnPlace = { readonly label: string; readonly line: number }

/**
 * The frames of cues by the labels of their first ones, counted from 00:00:00:00: each up to the
 * next one's beginning, the last, and any that the next does not follow, a frame long. Undefined
 * where there is no label, or one that the count has not, which is told once.
 */
export const ownPlaces = (
  places: readonly (OwnPlace | undefined)[],
  timing: ListTiming,
  tell: (problem: Problem) => void,
): readonly (Span | undefined)[] => {
  const { rate, isDropFrame } = timing
  const day = framesPerDay(rate, isDropFrame)
  let isTold = false
  const counts = places.map((place) => {
    if (!place) return undefined
    const count = parseTimecode(place.label, rate, isDropFrame)
    if (count.ok) return count.value
    if (!isTold)
      tell(
        problem(
          'conflict',
          `From line ${place.line}: “${place.label}” is not counted as this reel counts; such places are not taken.`,
          { line: place.line },
        ),
      )
    isTold = true
    return undefined
  })
  return counts.map((from, index) => {
    if (from === undefined) return undefined
    const next = counts[index + 1]
    const length = next === undefined ? 0 : (next - from + day) % day
    return { from, to: from + (length > 0 && length < day / 2 ? length : 1) }
  })
}
