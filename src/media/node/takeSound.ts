import { stat } from 'node:fs/promises'
import { basename } from 'node:path'
import type { TransferFormat } from '../../core/transfer/transferSettings.ts'
import { runProgram } from './runProgram.ts'

/** What a container holds, by ffmpeg's names of codecs, and in words. */
const HOLDS: Readonly<Partial<Record<TransferFormat, ReadonlySet<string>>>> = {
  h264: new Set(['aac', 'mp3', 'ac3', 'eac3', 'alac', 'opus', 'flac']),
  vp9: new Set(['opus', 'vorbis']),
  av1: new Set(['opus', 'vorbis']),
}

/** The sound of a scan in a file of its own, or why there is none. */
export type TakenSound =
  | { readonly codec: string; readonly startsAt: number; readonly none: undefined }
  | { readonly none: string }

type Probed = {
  readonly streams?: readonly { readonly codec_name?: string; readonly start_time?: string }[]
  readonly packets?: readonly { readonly pts_time?: string }[]
}

const probe = async (path: string, stream: string): Promise<Probed> => {
  const { status, out } = await runProgram('ffprobe', [
    ...['-v', 'error', '-of', 'json', '-select_streams', stream, '-read_intervals', '%+#1'],
    ...['-show_entries', 'stream=codec_name,start_time:packet=pts_time', `file:${path}`],
  ])
  return status === 0 ? (JSON.parse(out) as Probed) : {}
}

/**
 * Copies the first sound of a scan to `to`, as it is coded, where the format's container can hold
 * it. `startsAt`: seconds from the reel's first picture to its first packet.
 */
export const takeSound = async (
  path: string,
  format: TransferFormat,
  to: string,
): Promise<TakenSound> => {
  const holds = HOLDS[format]
  if (!holds) return { none: 'A sequence of pictures carries no sound.' }
  const isFile = await stat(path).then(
    (found) => found.isFile(),
    () => false,
  )
  if (!isFile) return { none: 'The scan is pictures alone, without sound.' }
  const { streams: [sound] = [], packets: [first] = [] } = await probe(path, 'a:0')
  const { streams: [video] = [] } = await probe(path, 'V:0')
  if (!sound?.codec_name) return { none: 'The scan has no sound.' }
  if (!holds.has(sound.codec_name))
    return {
      none: `The sound of ${basename(path)} is ${sound.codec_name}, which ${format === 'h264' ? 'MP4' : 'WebM'} cannot hold as it is; it is left out.`,
    }
  const copied = await runProgram('ffmpeg', [
    ...['-v', 'error', '-nostdin', '-y', '-i', `file:${path}`, '-map', '0:a:0', '-c', 'copy'],
    ...['-f', 'nut', `file:${to}`],
  ])
  if (copied.status !== 0)
    return { none: `The sound could not be taken: ${copied.error.trim().split('\n').at(-1)}.` }
  // The first packet may lie before the sound that is heard: what a decoder needs to get going.
  const startsAt = Number(first?.pts_time ?? sound.start_time ?? 0) - Number(video?.start_time ?? 0)
  return {
    codec: sound.codec_name,
    startsAt: Number.isFinite(startsAt) ? startsAt : 0,
    none: undefined,
  }
}
