import type { PassFinding } from '../../core/transfer/passRecord.ts'
import type { WrittenPass } from '../checkWritten.ts'

/** A written frame, from 0 with the head, that cannot be decoded, and why. */
export type BrokenFrame = { readonly at: number; readonly says: string }

/** Frames that are told by name, at most. */
const MOST_TOLD = 3

/** Whether every planned frame is there and can be decoded, and no other. */
export const framesFinding = (
  { plan, written }: Pick<WrittenPass, 'plan' | 'written'>,
  counted: number,
  broken: readonly BrokenFrame[],
): PassFinding => {
  const { frames } = plan.timeline
  const { name } = written.facts
  if (counted !== frames)
    return {
      check: 'frames',
      standing: 'wrong',
      says: `${name} has ${counted} frames, not the ${frames} that were planned.`,
    }
  if (broken.length === 0)
    return { check: 'frames', standing: 'right', says: `${frames} frames, as planned.` }
  const told = broken.slice(0, MOST_TOLD).map(({ at, says }) => `frame ${at} (${says})`)
  const more = broken.length > MOST_TOLD ? ` and ${broken.length - MOST_TOLD} more` : ''
  return {
    check: 'frames',
    standing: 'wrong',
    says: `Of the ${frames} frames of ${name}, these cannot be decoded: ${told.join(', ')}${more}.`,
  }
}
