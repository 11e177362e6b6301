import type { Layout, MatrixName, RangeName } from '../../core/picture/planes.ts'
import { framesPerSecond, type Rate, rate, snapRate } from '../../core/time/rate.ts'
import { codecName } from '../codecNames.ts'
import { areTimesEven } from '../evenTimes.ts'
import type { MediaFacts } from '../mediaFacts.ts'

/** What is read of ffprobe's JSON on a stream. */
export type ProbedStream = Readonly<Record<string, unknown>>

/** A text of ffprobe's JSON, empty where it is not there. */
export const textOf = (stream: ProbedStream, key: string): string => {
  const value = stream[key]
  return typeof value === 'string' ? value : ''
}

const CODECS: Readonly<Record<string, string>> = {
  h264: 'H.264',
  hevc: 'HEVC',
  vp8: 'VP8',
  vp9: 'VP9',
  av1: 'AV1',
  mpeg1video: 'MPEG-1',
  mpeg2video: 'MPEG-2',
  mpeg4: 'MPEG-4 Visual',
  prores: 'ProRes',
  dvvideo: 'DV',
  ffv1: 'FFV1',
  dnxhd: 'VC-3',
  mjpeg: 'Motion JPEG',
  jpeg2000: 'JPEG 2000',
  rawvideo: 'uncompressed',
  v210: 'uncompressed 4:2:2',
}

/** The stream's codec in words. */
export const codecOf = (stream: ProbedStream): string => {
  const codec = textOf(stream, 'codec_name')
  return CODECS[codec] ?? codecName(codec || textOf(stream, 'codec_tag_string'))
}

const statedMatrix = (stream: ProbedStream): MatrixName | undefined => {
  const space = textOf(stream, 'color_space')
  if (space === 'bt709') return 'bt709'
  if (space === 'smpte170m' || space === 'bt470bg') return 'bt601'
  return space === 'bt2020nc' ? 'bt2020' : undefined
}

const isStated = (value: string): boolean => value !== '' && value !== 'unknown'

/** Full range is stated; narrow range only where the stream describes its colour at all. */
const statedRange = (stream: ProbedStream): RangeName | undefined => {
  const range = textOf(stream, 'color_range')
  if (range === 'pc' || textOf(stream, 'pix_fmt').startsWith('yuvj')) return 'full'
  const isDescribed = ['color_space', 'color_primaries', 'color_transfer'].some((key) =>
    isStated(textOf(stream, key)),
  )
  return range === 'tv' && isDescribed ? 'narrow' : undefined
}

const rateFrom = (fraction: string): Rate | undefined => {
  const [num = Number.NaN, den = Number.NaN] = fraction.split('/').map(Number)
  return num > 0 && den > 0 ? rate(num, den) : undefined
}

/** How much the lowest rate all stamps fit may differ from the mean one and still be meant. */
const CLOSE = 0.05

/** The rate the stamps were laid out for; the mean rate where that is another thing. */
const rateOf = (stream: ProbedStream, times: readonly number[]): Rate | undefined => {
  if (!areTimesEven(times)) return undefined
  const mean = rateFrom(textOf(stream, 'avg_frame_rate'))
  const base = rateFrom(textOf(stream, 'r_frame_rate'))
  const isMeant =
    mean && base && Math.abs(framesPerSecond(base) / framesPerSecond(mean) - 1) < CLOSE
  const best = isMeant ? base : (mean ?? base)
  return best && snapRate(framesPerSecond(best))
}

/** Width over height of the picture as shown. */
const displayAspect = (stream: ProbedStream, width: number, height: number): number => {
  const [num = 0, den = 0] = textOf(stream, 'sample_aspect_ratio').split(':').map(Number)
  return num > 0 && den > 0 ? (width * num) / (height * den) : width / height
}

/**
 * What a stream states of its pictures.
 *
 * @param times seconds at which they are shown, in order
 */
export const streamFacts = (
  stream: ProbedStream,
  layout: Layout,
  times: readonly number[],
): Pick<
  MediaFacts,
  | 'codec'
  | 'width'
  | 'height'
  | 'displayAspect'
  | 'rate'
  | 'matrix'
  | 'range'
  | 'primaries'
  | 'transfer'
> => {
  const width = Number(stream.width)
  const height = Number(stream.height)
  const primaries = textOf(stream, 'color_primaries')
  const transfer = textOf(stream, 'color_transfer')
  return {
    codec: codecOf(stream),
    width,
    height,
    displayAspect: displayAspect(stream, width, height),
    rate: rateOf(stream, times),
    matrix: layout === 'rgb' ? 'bt709' : statedMatrix(stream),
    range: statedRange(stream),
    ...(isStated(primaries) && { primaries }),
    ...(isStated(transfer) && { transfer }),
  }
}
