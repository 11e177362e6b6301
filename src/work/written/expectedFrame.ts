import { cueIndexAt } from '../../core/job/cueList.ts'
import { valuesAt } from '../../core/job/valuesAt.ts'
import type { Planes } from '../../core/picture/planes.ts'
import type { Frame } from '../../core/time/frame.ts'
import { formOf } from '../../core/transfer/formOf.ts'
import { passLimiter } from '../../core/transfer/passLimiter.ts'
import { planesOfDelivered } from '../../core/transfer/planesOfDelivered.ts'
import type { WrittenPass } from '../checkWritten.ts'

/**
 * What the file should show on a frame of the reel, made again from the scan by the stages of the
 * pass; or, with `asCue`, what it would show if it had the values of that cue of the reel instead.
 */
export const expectedFrame = (
  { plan, kernel, burnIn }: Pick<WrittenPass, 'plan' | 'kernel' | 'burnIn'>,
  at: Frame,
  scanned: Planes,
  asCue?: number,
): Planes => {
  const { cues, coding } = plan
  const index = cueIndexAt(cues, at)
  const cue = cues[asCue ?? index]
  if (!cue) throw new Error(`Bug: frame ${at} belongs to no cue`)
  const { grade, framing } =
    asCue === undefined || asCue === index ? valuesAt(cue, cues[index - 1], at) : cue
  const form = formOf(plan)
  const overlay = burnIn(at)
  const limiter = passLimiter(plan)
  const { bytes } = kernel.deliver(
    { planes: scanned, coding, grade, framing },
    {
      form,
      ...(limiter && { limiter }),
      ...(overlay && { overlay }),
    },
  )
  return planesOfDelivered(bytes, form, scanned)
}
