import { basename } from 'node:path'
import { problem } from '../../core/base/problem.ts'
import { fail, ok, type Result } from '../../core/base/result.ts'
import type { Layout, MatrixName, RangeName } from '../../core/picture/planes.ts'
import { type Rate, rate } from '../../core/time/rate.ts'
import type { MediaFacts } from '../mediaFacts.ts'
import { runProgram } from './runProgram.ts'

/** What is read of ffprobe's JSON. */
type ProbedStream = Readonly<Record<string, unknown>>

/** Facts of a video, with what its pictures are to be asked for as. */
export type ProbedVideo = {
  readonly facts: MediaFacts
  /** ffmpeg's index of the stream and the pixel format its raw pictures are asked for in. */
  readonly stream: number
  readonly pixelFormat: string
}

export const NO_FFMPEG = problem(
  'cannot-decode',
  'Reading compressed video needs ffmpeg, which is not on this machine’s PATH. Install it, or give a numbered PNG or TIFF sequence.',
)

const CODECS: Readonly<Record<string, string>> = {
  h264: 'H.264',
  hevc: 'HEVC',
  vp8: 'VP8',
  vp9: 'VP9',
  av1: 'AV1',
  mpeg2video: 'MPEG-2',
  mpeg4: 'MPEG-4 Visual',
  prores: 'ProRes',
  dvvideo: 'DV',
  ffv1: 'FFV1',
  dnxhd: 'VC-3',
}

/** A path ffmpeg cannot take for an option or another protocol. */
export const fileUrl = (path: string): string => `file:${path}`

export const SAFE_INPUT = ['-protocol_whitelist', 'file,pipe'] as const

const text = (stream: ProbedStream, key: string): string => {
  const value = stream[key]
  return typeof value === 'string' ? value : ''
}

const number = (stream: ProbedStream, key: string): number => Number(stream[key] ?? Number.NaN)

/** Chroma subsampling and depth of one of ffmpeg's pixel formats, and the planar one to ask for. */
const plainFormat = (
  name: string,
): { readonly layout: Layout; readonly depth: number; readonly ask: string } => {
  const deeper = /(9|10|12|14|16)(le|be)$/u.exec(name)
  const found = Number(deeper?.[1] ?? 8)
  const depth = found === 9 ? 10 : found === 14 ? 16 : found
  const suffix = depth === 8 ? '' : `${depth}le`
  if (/^(gbr|rgb|bgr|argb|abgr|x2rgb|pal8|0rgb|0bgr)/u.test(name))
    return { layout: 'rgb', depth, ask: `gbrp${suffix}` }
  const layout: Layout = /444/u.test(name)
    ? '444'
    : /422|yuyv|uyvy|nv16/u.test(name)
      ? '422'
      : '420'
  return { layout, depth, ask: `yuv${layout}p${suffix}` }
}

const matrixOf = (stream: ProbedStream): MatrixName | undefined => {
  const space = text(stream, 'color_space')
  if (space === 'bt709') return 'bt709'
  if (space === 'smpte170m' || space === 'bt470bg') return 'bt601'
  return space === 'bt2020nc' ? 'bt2020' : undefined
}

const rangeOf = (stream: ProbedStream): RangeName | undefined => {
  const range = text(stream, 'color_range')
  if (range === 'pc' || text(stream, 'pix_fmt').startsWith('yuvj')) return 'full'
  return range === 'tv' ? 'narrow' : undefined
}

const rateFrom = (fraction: string): Rate | undefined => {
  const [num = Number.NaN, den = Number.NaN] = fraction.split('/').map(Number)
  return num > 0 && den > 0 ? rate(num, den) : undefined
}

const CONTAINERS: readonly (readonly [RegExp, string])[] = [
  [/^mov/u, 'MP4'],
  [/^matroska/u, 'Matroska'],
  [/^mpegts/u, 'MPEG transport stream'],
  [/^mpeg$/u, 'MPEG program stream'],
  [/^avi/u, 'AVI'],
  [/^mxf/u, 'MXF'],
]

const containerOf = (name: string): string =>
  CONTAINERS.find(([pattern]) => pattern.test(name))?.[1] ?? name

/** Width over height of the picture as shown. */
const displayAspect = (stream: ProbedStream, width: number, height: number): number => {
  const [num = 0, den = 0] = text(stream, 'sample_aspect_ratio').split(':').map(Number)
  return num > 0 && den > 0 ? (width * num) / (height * den) : width / height
}

/** Asks ffprobe what a file holds; its first stream of moving pictures is taken. */
export const probeVideo = async (path: string, bytes: number): Promise<Result<ProbedVideo>> => {
  const name = basename(path)
  const probed = await runProgram('ffprobe', [
    ...['-v', 'error', '-of', 'json', '-show_streams', '-show_format', '-count_packets'],
    ...SAFE_INPUT,
    fileUrl(path),
  ])
  if (probed.status === undefined) return fail(NO_FFMPEG)
  if (probed.status !== 0)
    return fail(
      problem('cannot-read', `${name} cannot be read as video: ${lastLine(probed.error)}`, {
        file: path,
      }),
    )
  const { streams = [], format = {} } = JSON.parse(probed.out) as {
    streams?: readonly ProbedStream[]
    format?: ProbedStream
  }
  const stream = streams.find(isMovingPicture)
  if (!stream)
    return fail(problem('cannot-decode', `${name} holds no moving pictures.`, { file: path }))
  const { layout, depth, ask } = plainFormat(text(stream, 'pix_fmt'))
  const width = number(stream, 'width')
  const height = number(stream, 'height')
  const codec = text(stream, 'codec_name')
  return ok({
    stream: number(stream, 'index'),
    pixelFormat: ask,
    facts: {
      name,
      container: containerOf(text(format, 'format_name')),
      codec: CODECS[codec] ?? codec,
      width,
      height,
      displayAspect: displayAspect(stream, width, height),
      depth,
      layout,
      frames: number(stream, 'nb_read_packets'),
      rate: rateFrom(text(stream, 'avg_frame_rate')) ?? rateFrom(text(stream, 'r_frame_rate')),
      matrix: layout === 'rgb' ? 'bt709' : matrixOf(stream),
      range: rangeOf(stream),
      bytes,
    },
  })
}

const isMovingPicture = (stream: ProbedStream): boolean => {
  const disposition = stream.disposition as Readonly<Record<string, number>> | undefined
  return text(stream, 'codec_type') === 'video' && disposition?.attached_pic !== 1
}

const lastLine = (output: string): string => {
  const line = output.trim().split('\n').at(-1) ?? ''
  return line.replace(/^.*file:/u, '')
}
