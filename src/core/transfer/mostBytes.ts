import type { PassPlan } from './passPlan.ts'
import type { TransferFormat } from './transferSettings.ts'

/**
 * Bytes of a pixel at most. Pictures: what the format holds, with a little for deflate that finds
 * nothing. Video: of 8-bit 4:2:0, with what an encoder saves at the least (from measurement).
 */
const BYTES_A_PIXEL: Readonly<Record<TransferFormat, number>> = {
  dpx: 4,
  tiff: 6,
  png: 6.1,
  h264: 0.5,
  vp9: 0.5,
  av1: 0.5,
}

/** Bytes of a file's head, and of the smallest block of a disk that it fills. */
const BYTES_A_FRAME = 8192

/** How much room a pass needs at most where it writes. Parts of a video are there twice, joined. */
export const mostBytes = ({ reel, settings, timeline }: PassPlan): number => {
  const { width, height } = reel.media
  const pictures =
    timeline.frames * (BYTES_A_PIXEL[settings.format] * width * height + BYTES_A_FRAME)
  return Math.ceil(BYTES_A_PIXEL[settings.format] < 1 ? 2 * pictures : pictures)
}
