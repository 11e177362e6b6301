import { burnInOf } from '../core/head/burnIn.ts'
import { headPictureOf } from '../core/head/headPicture.ts'
import type { PassPlan } from '../core/transfer/passPlan.ts'
import type { DeliverWork } from './deliverFrames.ts'

/** What the head of a plan shows, and what is burnt into its reel. */
export const headPicturesOf = (plan: PassPlan): Pick<DeliverWork, 'headPicture' | 'burnIn'> => ({
  headPicture: headPictureOf(plan),
  burnIn: burnInOf(plan),
})
