import { basename } from 'node:path'
import { problem } from '../../core/base/problem.ts'
import { fail, ok, type Result } from '../../core/base/result.ts'
import type { MediaFacts } from '../mediaFacts.ts'
import { type FramePlaces, framePlaces, type TimedPacket } from './framePlaces.ts'
import { type AskedFormat, askedFormat, type PixelFormat } from './pixelFormat.ts'
import { runProgram } from './runProgram.ts'
import { codecOf, type ProbedStream, streamFacts, textOf } from './streamFacts.ts'

/** Facts of a video, with what its pictures are to be asked for as. */
export type ProbedVideo = {
  readonly facts: MediaFacts
  /** ffmpeg's index of the stream. */
  readonly stream: number
  readonly format: AskedFormat
  /** Undefined where frames can only be counted from the first. */
  readonly places: FramePlaces | undefined
}

/** A file to be read through ffmpeg: its absolute path, what it is by its bytes, and its size. */
export type VideoFile = {
  readonly path: string
  readonly container: string
  readonly bytes: number
}

export const NO_FFMPEG = problem(
  'cannot-decode',
  'Reading compressed video needs ffmpeg, which is not on this machine’s PATH. Install it, or give a numbered DPX, PNG or TIFF sequence.',
)

/** File formats ffmpeg may take a file for: none that lead on to other files or addresses. */
const FORMATS = [
  ...['asf', 'av1', 'avi', 'dv', 'flv', 'gxf', 'h264', 'hevc', 'ivf', 'm4v', 'matroska', 'mov'],
  ...['mpeg', 'mpegts', 'mpegvideo', 'mxf', 'nut', 'obu', 'ogg', 'vc1', 'yuv4mpegpipe'],
]

/**
 * Arguments that name a file to ffmpeg or ffprobe so that nothing else is meant, whatever its
 * name, and nothing but it is read.
 */
export const inputOf = ({ path }: VideoFile): readonly string[] => [
  ...['-protocol_whitelist', 'file,pipe', '-format_whitelist', FORMATS.join(',')],
  ...['-i', `file:${path}`],
]

/** Times in seconds as text; AVI has no times of presentation. */
type Packet = TimedPacket & { readonly dts_time?: string }

type Probed = {
  readonly streams?: readonly ProbedStream[]
  readonly packets?: readonly Packet[]
}

const ENTRIES = [
  'packet=pts,pts_time,dts_time,flags',
  'stream=index,codec_name,codec_tag_string,width,height,pix_fmt,sample_aspect_ratio,color_range,color_space,color_primaries,color_transfer,avg_frame_rate,r_frame_rate',
].join(':')

const probe = async (file: VideoFile, args: readonly string[]): Promise<Result<Probed>> => {
  const select = ['-v', 'error', '-of', 'json', '-select_streams', 'V:0', ...args]
  const probed = await runProgram('ffprobe', [...select, ...inputOf(file)])
  if (probed.status === undefined) return fail(NO_FFMPEG)
  const name = basename(file.path)
  if (probed.status !== 0)
    return fail(
      problem('cannot-read', `${name} cannot be read as video: ${lastLine(probed.error)}`, {
        file: file.path,
      }),
    )
  return ok(JSON.parse(probed.out) as Probed)
}

/** Packets of VP8 may show nothing, so its pictures are counted by decoding them. */
const countDecoded = async (file: VideoFile): Promise<Result<number>> => {
  const counted = await probe(file, ['-count_frames', '-show_entries', 'stream=nb_read_frames'])
  return counted.ok ? ok(Number(counted.value.streams?.[0]?.nb_read_frames)) : counted
}

let formats: Promise<readonly PixelFormat[]> | undefined

/** All pixel formats this machine's ffmpeg knows; asked for once. */
const pixelFormats = (): Promise<readonly PixelFormat[]> => {
  formats ??= runProgram('ffprobe', ['-v', 'error', '-of', 'json', '-show_pixel_formats']).then(
    ({ out }) => (JSON.parse(out) as { pixel_formats: readonly PixelFormat[] }).pixel_formats,
  )
  return formats
}

/** Asks ffprobe what a file holds; its first stream of moving pictures is taken. */
export const probeVideo = async (file: VideoFile): Promise<Result<ProbedVideo>> => {
  const name = basename(file.path)
  // Both at once: a part of a pass begins the sooner.
  const [probed, formatsHere] = await Promise.all([
    probe(file, ['-show_entries', ENTRIES]),
    pixelFormats().catch((): readonly PixelFormat[] => []),
  ])
  if (!probed.ok) return probed
  const [stream] = probed.value.streams ?? []
  if (!stream)
    return fail(
      problem('cannot-decode', `${name} (${file.container}) has no video track; give a video.`, {
        file: file.path,
      }),
    )
  const pixels = textOf(stream, 'pix_fmt')
  const known = formatsHere.find((each) => each.name === pixels)
  const format = known && askedFormat(known)
  if (!format)
    return fail(
      problem(
        'cannot-decode',
        `${name} holds ${codecOf(stream)} pictures${pixels ? ` of the kind ${pixels}` : ''}, which cannot be read here. Convert it to an image sequence (DPX, or PNG or TIFF of 16 bits).`,
        { file: file.path },
      ),
    )
  const packets = (probed.value.packets ?? []).filter(({ flags = '' }) => !flags.includes('D'))
  const counted =
    textOf(stream, 'codec_name') === 'vp8' ? await countDecoded(file) : ok(packets.length)
  if (!counted.ok) return counted
  const times = packets
    .map(({ pts_time, dts_time }) => Number(pts_time ?? dts_time))
    .filter(Number.isFinite)
  return ok({
    stream: Number(stream.index),
    format,
    places: framePlaces(packets, counted.value),
    facts: {
      name,
      container: file.container,
      bytes: file.bytes,
      frames: counted.value,
      layout: format.layout,
      depth: format.depth,
      ...streamFacts(
        stream,
        format.layout,
        times.sort((a, b) => a - b),
      ),
    },
  })
}

const lastLine = (output: string): string => {
  const line = output.trim().split('\n').at(-1) ?? ''
  return line.replace(/^.*file:\S*: /u, '')
}
