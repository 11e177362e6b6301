import type { MatrixName } from '../picture/planes.ts'
import type { Triple } from './triple.ts'

/**
 * Weights of R′, G′, B′ in Y′.
 * BT.601-7 §2.5.1; BT.709-6 §3.2; BT.2020-2 table 4 (non-constant luminance).
 */
export const LUMA_WEIGHTS: Readonly<Record<MatrixName, Triple>> = {
  bt601: [0.299, 0.587, 0.114],
  bt709: [0.2126, 0.7152, 0.0722],
  bt2020: [0.2627, 0.678, 0.0593],
}
