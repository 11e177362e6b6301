import { framesPerSecond } from '../../core/time/rate.ts'
import type { PassPlan } from '../../core/transfer/passPlan.ts'
import type { TransferFormat } from '../../core/transfer/transferSettings.ts'
import { type VideoTags, videoTags } from '../../core/transfer/videoTags.ts'

/** Kinds of video that ffmpeg makes, with the encoders that may be there, the best first. */
const ENCODERS: Readonly<Partial<Record<TransferFormat, readonly string[]>>> = {
  h264: ['libx264'],
  vp9: ['libvpx-vp9'],
  av1: ['libsvtav1', 'libaom-av1'],
}

export const encodersOf = (format: TransferFormat): readonly string[] => ENCODERS[format] ?? []

/**
 * Constant quality, high enough to hand over, and a fixed number of threads: what is written does
 * not depend on the machine's cores. Values by common practice, no published source.
 */
const QUALITY: Readonly<Record<string, readonly string[]>> = {
  libx264: ['-preset', 'medium', '-crf', '14', '-sc_threshold', '0', '-flags', '+cgop'],
  'libvpx-vp9': ['-crf', '18', '-b:v', '0', '-deadline', 'good', '-cpu-used', '4', '-row-mt', '1'],
  libsvtav1: ['-preset', '8', '-crf', '20'],
  'libaom-av1': ['-crf', '18', '-b:v', '0', '-cpu-used', '6', '-row-mt', '1'],
}

/** A luma equation as ffmpeg names it. */
const ffmpegMatrix = (matrix: string): string => (matrix === 'bt2020-ncl' ? 'bt2020nc' : matrix)

/** Arguments that have a file state its colour; of codes of narrow range. */
export const colourArguments = ({ matrix, primaries, transfer }: VideoTags): readonly string[] => [
  ...['-color_range', 'tv', '-colorspace', ffmpegMatrix(matrix)],
  ...['-color_primaries', primaries, '-color_trc', transfer],
]

const PARTS = 10_000

const pixelShape = ({ coding }: PassPlan): string => {
  const aspect = coding.pixelAspect ?? 1
  return Math.abs(aspect - 1) < 0.001 ? '1/1' : `${Math.round(aspect * PARTS)}/${PARTS}`
}

/** Small enough to be sent to be looked at; by common practice, no published source. */
export const SMALL_H264: readonly string[] = ['-preset', 'fast', '-crf', '24', '-sc_threshold', '0']

/**
 * Arguments that make a video of raw 4:2:0 planes of 8 bits, narrow range, from standard input, of
 * the quality that is handed over or of another.
 */
export const encoderArguments = (
  plan: PassPlan,
  encoder: string,
  quality = QUALITY[encoder] ?? [],
): readonly string[] => {
  const { width, height } = plan.reel.media
  const { num, den } = plan.reel.rate
  const second = String(Math.round(framesPerSecond(plan.reel.rate)))
  return [
    ...['-f', 'rawvideo', '-pix_fmt', 'yuv420p', '-s', `${width}x${height}`],
    ...['-r', `${num}/${den}`, '-i', 'pipe:0', '-vf', `setsar=${pixelShape(plan)}`],
    ...['-c:v', encoder, ...quality, '-threads', '4', '-pix_fmt', 'yuv420p'],
    ...['-g', second, '-keyint_min', second, ...colourArguments(videoTags(plan))],
  ]
}
