import type { Planes } from '../core/picture/planes.ts'
import type { PassPlan } from '../core/transfer/passPlan.ts'
import type { DeliverWork } from './deliverFrames.ts'

const noHead = (): Planes => {
  throw new Error('Bug: head pictures are not made yet')
}

/** What the head of a plan shows, and what is burnt into its reel. */
export const headPicturesOf = (_plan: PassPlan): Pick<DeliverWork, 'headPicture' | 'burnIn'> => ({
  headPicture: noHead,
  burnIn: () => undefined,
})
