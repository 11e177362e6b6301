import type { MatrixName, RangeName } from '../picture/planes.ts'
import { type Rate, rate } from '../time/rate.ts'

export type LikelyCoding = {
  readonly matrix: MatrixName
  readonly range: RangeName
  readonly rate: Rate
}

/** Above this height a picture is not standard definition: BT.601-7 knows 525 and 625 lines. */
const TALLEST_SD = 576

/**
 * The answer a file most often means by leaving its coding open. Common practice, no published
 * source: BT.601 up to 576 lines, BT.709 above; narrow range for video, full for pictures of
 * their own; 25 frames a second.
 */
export const likelyCoding = (height: number, isVideo: boolean): LikelyCoding => ({
  matrix: height <= TALLEST_SD ? 'bt601' : 'bt709',
  range: isVideo ? 'narrow' : 'full',
  rate: rate(25),
})
