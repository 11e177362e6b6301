import type { Planes } from '../picture/planes.ts'
import { framesPerSecond } from '../time/rate.ts'
import type { OutputFrame } from '../transfer/outputTimeline.ts'
import type { PassPlan } from '../transfer/passPlan.ts'
import { barsPicture } from './barsPicture.ts'
import { leaderPicture } from './leaderPicture.ts'
import { slatePicture } from './slatePicture.ts'

/** The pictures of a plan's head, as full-range R′G′B′ of 16 bits. Those that stand are made once. */
export const headPictureOf = (plan: PassPlan): ((at: OutputFrame) => Planes) => {
  const { width, height } = plan.reel.media
  let bars: Planes | undefined
  let slate: Planes | undefined
  return ({ kind, index }) => {
    if (kind === 'bars') {
      bars ??= barsPicture(width, height)
      return bars
    }
    if (kind === 'slate') {
      slate ??= slatePicture(plan)
      return slate
    }
    if (kind === 'reel') throw new Error('Bug: a frame of the reel is no part of the head')
    const length = plan.timeline.parts.leader
    return leaderPicture({
      ...{ width, height, pixelAspect: plan.coding.pixelAspect ?? 1 },
      ...{ left: length - index, second: Math.round(framesPerSecond(plan.reel.rate)), length },
    })
  }
}
