import { spawn } from 'node:child_process'
import { basename } from 'node:path'
import { problem } from '../../core/base/problem.ts'
import { chromaHeight, chromaWidth, type Planes, type Samples } from '../../core/picture/planes.ts'
import { MediaError } from '../mediaError.ts'
import { inputOf, NO_FFMPEG, type ProbedVideo, type VideoFile } from './probeVideo.ts'
import { readShownTimes } from './shownTimes.ts'

/** Takes the planes of a raw picture apart. ffmpeg's planar R′G′B′ comes as G, B, R. */
const planesFrom = (bytes: Uint8Array, { facts, format }: ProbedVideo): Planes => {
  const { width, height } = facts
  const { layout, depth } = format
  const luma = width * height
  const chroma = chromaWidth(layout, width) * chromaHeight(layout, height)
  const plane = (from: number, count: number): Samples =>
    depth > 8
      ? new Uint16Array(bytes.buffer, bytes.byteOffset + 2 * from, count)
      : bytes.subarray(from, from + count)
  const first = plane(0, luma)
  if (format.isGrey) {
    const neutral = (depth > 8 ? new Uint16Array(chroma) : new Uint8Array(chroma)).fill(
      2 ** (depth - 1),
    )
    return { width, height, layout, depth, samples: [first, neutral, neutral] }
  }
  const [second, third] = [plane(luma, chroma), plane(luma + chroma, chroma)] as const
  const samples =
    layout === 'rgb' ? ([third, first, second] as const) : ([first, second, third] as const)
  return { width, height, layout, depth, samples }
}

const frameBytes = ({ facts: { width, height }, format }: ProbedVideo): number => {
  const { layout, depth, isGrey } = format
  const chroma = isGrey ? 0 : chromaWidth(layout, width) * chromaHeight(layout, height)
  return (width * height + 2 * chroma) * (depth > 8 ? 2 : 1)
}

/** The same range in and out, so that ffmpeg rearranges samples and leaves their values alone. */
const REARRANGE = 'scale=in_range=full:out_range=full:flags=accurate_rnd'

/** Each decoded picture once: how ffmpeg since 5.1, and before, is told so. */
const EACH_ONCE = ['-fps_mode', '-vsync'] as const

/** Containers whose tables lead to a key frame just as they say. */
const SEEKABLE = new Set(['MP4', 'MOV', 'Matroska', 'WebM'])

/** A picture and the frame it is. */
export type RunFrame = { readonly at: number; readonly planes: Planes }

export type FfmpegRun = {
  readonly frames: AsyncGenerator<RunFrame>
  /** Ends the program at once; `frames` then ends early, without an error. */
  readonly kill: () => void
  readonly isKilled: () => boolean
  /** Whether errors were told on the way: what is missing is then damaged, not past the end. */
  readonly hadErrors: () => boolean
}

/** Where a run begins: at a key frame the container leads to, or at the first picture. */
const seekArguments = (
  { container }: VideoFile,
  { places }: ProbedVideo,
  from: number,
): readonly string[] | undefined => {
  const key = places?.keyBefore(from)
  return key && key.rank > 0 && SEEKABLE.has(container)
    ? ['-seek_timestamp', '1', '-noaccurate_seek', '-ss', String(key.seconds)]
    : undefined
}

/**
 * Every picture of a video from frame `from` on in order of presentation, each exactly once, as
 * ffmpeg decodes it, not turned and not scaled; by its time it is known which frame it is, so that
 * one that cannot be decoded is missing from the run and no other is taken for it. Where pictures
 * have no times of their own they are counted from the first. The program starts with the first
 * picture asked for and is ended when the reading ends, however it ends.
 */
export const startFfmpeg = (file: VideoFile, video: ProbedVideo, from: number): FfmpegRun => {
  const stop = new AbortController()
  let errors = false
  const name = basename(file.path)
  const { places } = video
  const refuse = (detail: string): MediaError =>
    new MediaError(problem('cannot-decode', `${name} ${detail}`, { file: file.path }))

  const spawnFfmpeg = (eachOnce: string, seek: readonly string[] | undefined) => {
    const wanted = seek && places ? [`select=gte(pts\\,${places.times[from]})`] : []
    const filters = [
      ...wanted,
      'showinfo=checksum=0',
      ...(video.format.isConverted ? [REARRANGE] : []),
    ]
    return spawn(
      'ffmpeg',
      [
        ...['-hide_banner', '-nostats', '-v', 'level+info', '-nostdin', '-noautorotate'],
        // A picture with an error in it is left out: it is named, never shown as if it were whole.
        ...['-err_detect', 'explode', '-copyts', ...(seek ?? []), ...inputOf(file)],
        ...['-map', `0:${video.stream}`, eachOnce, 'passthrough', '-vf', filters.join(',')],
        ...['-f', 'rawvideo', '-pix_fmt', video.format.ask, 'pipe:1'],
      ],
      { stdio: ['ignore', 'pipe', 'pipe'] },
    )
  }

  async function* run(
    [eachOnce, ...older]: readonly string[],
    seek: readonly string[] | undefined,
  ): AsyncGenerator<RunFrame> {
    if (eachOnce === undefined) throw refuse('cannot be decoded: this ffmpeg is too old.')
    const child = spawnFfmpeg(eachOnce, seek)
    const kill = (): void => void child.kill('SIGKILL')
    stop.signal.addEventListener('abort', kill)
    const told = readShownTimes()
    let isAbsent = false
    const ended = new Promise<number>((resolve) => {
      child.once('error', () => {
        isAbsent = true
        resolve(1)
      })
      child.once('close', (status) => resolve(status ?? 1))
    }).finally(told.end)
    child.stderr.setEncoding('utf8').on('data', told.add)
    const size = frameBytes(video)
    let bytes = new Uint8Array(size)
    let filled = 0
    let count = 0
    try {
      for await (const chunk of child.stdout as AsyncIterable<Uint8Array>) {
        let read = 0
        while (read < chunk.length) {
          const length = Math.min(chunk.length - read, size - filled)
          bytes.set(chunk.subarray(read, read + length), filled)
          filled += length
          read += length
          if (filled < size) continue
          const time = places && (await told.timeOf(count))
          const rank = time === undefined ? undefined : places?.rankOf(time)
          if (seek && count === 0 && rank === undefined) {
            yield* run([eachOnce, ...older], undefined)
            return
          }
          const planes = planesFrom(bytes, video)
          bytes = new Uint8Array(size)
          filled = 0
          const at = rank ?? count
          count++
          yield { at, planes }
        }
      }
      const status = await ended
      if (stop.signal.aborted) return
      const said = told.lastError()
      errors = said !== ''
      if (isAbsent) throw new MediaError(NO_FFMPEG)
      if (status !== 0 && count === 0 && /option/iu.test(said) && said.includes(eachOnce.slice(1)))
        yield* run(older, seek)
      else if (status !== 0) throw refuse(`cannot be decoded beyond frame ${from + count}: ${said}`)
      else if (filled > 0) throw refuse('changes its size on the way; a reel has one size.')
    } finally {
      stop.signal.removeEventListener('abort', kill)
      kill()
      await ended
    }
  }
  return {
    frames: run(EACH_ONCE, seekArguments(file, video, from)),
    kill: () => stop.abort(),
    isKilled: () => stop.signal.aborted,
    hadErrors: () => errors,
  }
}
