import type { Planes } from '../picture/planes.ts'
import { planesDifference } from './planesOfDelivered.ts'

/**
 * By how many dB a decoded picture must be nearer to another one than that is to what it should
 * be: the codec's loss is then at most half the root mean square of what tells the two apart.
 */
const TOLD_APART = 6

/**
 * Whether a decoded picture shows `other` rather than `own`, which it should show. False where the
 * two are too much alike to be told apart through the codec's loss.
 */
export const isNearerTo = (decoded: Planes, own: Planes, other: Planes): boolean => {
  const toOther = planesDifference(decoded, other).psnr
  return (
    toOther > planesDifference(decoded, own).psnr &&
    toOther > planesDifference(own, other).psnr + TOLD_APART
  )
}
