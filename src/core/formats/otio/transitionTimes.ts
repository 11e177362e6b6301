import { type JsonNode, type JsonRecord, memberOf, withMember } from '../../base/json/jsonNode.ts'
import { jsonNumber } from '../../base/json/plainJson.ts'
import type { Rate } from '../../time/rate.ts'
import { readTime, timeInFrames, wholeFrames } from './otioTime.ts'

/** How many frames before the cut a transition begins, and how many it lasts in all. */
export type TransitionTimes = { readonly lead: number; readonly frames: number }

/** The times of a transition; undefined where they are none, or no whole frames. */
export const transitionTimes = (
  transition: JsonNode | undefined,
  frameRate: Rate,
): TransitionTimes | undefined => {
  const before = readTime(memberOf(transition, 'in_offset'))
  const after = readTime(memberOf(transition, 'out_offset'))
  if (!before || !after) return undefined
  const lead = wholeFrames(timeInFrames(before, frameRate))
  const trail = wholeFrames(timeInFrames(after, frameRate))
  if (lead === undefined || trail === undefined || lead < 0 || trail < 0) return undefined
  return { lead, frames: lead + trail }
}

/**
 * The same transition for a clip that begins on the transition's first frame, as a cue does: all of
 * it is after the cut.
 */
export const fromItsFirstFrame = (transition: JsonRecord): JsonRecord => {
  const [before, after] = [memberOf(transition, 'in_offset'), memberOf(transition, 'out_offset')]
  const [lead, trail] = [readTime(before), readTime(after)]
  if (before?.kind !== 'record' || after?.kind !== 'record' || !lead?.value || !trail)
    return transition
  const whole = trail.value + (lead.value * trail.rate) / lead.rate
  const begun = withMember(transition, 'in_offset', withMember(before, 'value', jsonNumber(0)))
  return withMember(begun, 'out_offset', withMember(after, 'value', jsonNumber(whole)))
}
