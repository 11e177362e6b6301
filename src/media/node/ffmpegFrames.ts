import { spawn } from 'node:child_process'
import { basename } from 'node:path'
import { problem } from '../../core/base/problem.ts'
import { chromaHeight, chromaWidth, type Planes, type Samples } from '../../core/picture/planes.ts'
import { MediaError } from '../mediaError.ts'
import { inputOf, NO_FFMPEG, type ProbedVideo, type VideoFile } from './probeVideo.ts'

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
const REARRANGE = ['-vf', 'scale=in_range=full:out_range=full:flags=accurate_rnd']

/** Each decoded picture once: how ffmpeg since 5.1, and before, is told so. */
const EACH_ONCE = ['-fps_mode', '-vsync'] as const

export type FfmpegRun = {
  readonly frames: AsyncGenerator<Planes>
  /** Ends the program at once; `frames` then ends early, without an error. */
  readonly kill: () => void
  readonly isKilled: () => boolean
}

/**
 * Every picture of a video in order of presentation, each exactly once, as ffmpeg decodes it, not
 * turned and not scaled. The program starts with the first picture asked for and is ended when the
 * reading ends, however it ends.
 */
export const startFfmpeg = (file: VideoFile, video: ProbedVideo): FfmpegRun => {
  const stop = new AbortController()
  const name = basename(file.path)
  const refuse = (detail: string): MediaError =>
    new MediaError(problem('cannot-decode', `${name} ${detail}`, { file: file.path }))

  async function* run([eachOnce, ...older]: readonly string[]): AsyncGenerator<Planes> {
    if (eachOnce === undefined) throw refuse('cannot be decoded: this ffmpeg is too old.')
    const child = spawn(
      'ffmpeg',
      [
        ...['-v', 'error', '-nostdin', '-noautorotate', ...inputOf(file)],
        ...['-map', `0:${video.stream}`, eachOnce, 'passthrough'],
        ...(video.format.isConverted ? REARRANGE : []),
        ...['-f', 'rawvideo', '-pix_fmt', video.format.ask, 'pipe:1'],
      ],
      { stdio: ['ignore', 'pipe', 'pipe'] },
    )
    const kill = (): void => void child.kill('SIGKILL')
    stop.signal.addEventListener('abort', kill)
    let said = ''
    let isAbsent = false
    const ended = new Promise<number>((resolve) => {
      child.once('error', () => {
        isAbsent = true
        resolve(1)
      })
      child.once('close', (status) => resolve(status ?? 1))
    })
    child.stderr.setEncoding('utf8').on('data', (text: string) => {
      said = (said + text).slice(-2000)
    })
    const size = frameBytes(video)
    let bytes = new Uint8Array(size)
    let filled = 0
    let count = 0
    try {
      for await (const chunk of child.stdout as AsyncIterable<Uint8Array>) {
        let from = 0
        while (from < chunk.length) {
          const length = Math.min(chunk.length - from, size - filled)
          bytes.set(chunk.subarray(from, from + length), filled)
          filled += length
          from += length
          if (filled < size) continue
          const planes = planesFrom(bytes, video)
          bytes = new Uint8Array(size)
          filled = 0
          count++
          yield planes
        }
      }
      const status = await ended
      if (stop.signal.aborted) return
      if (isAbsent) throw new MediaError(NO_FFMPEG)
      if (status !== 0 && count === 0 && /option/iu.test(said) && said.includes(eachOnce.slice(1)))
        yield* run(older)
      else if (status !== 0)
        throw refuse(
          `cannot be decoded beyond frame ${count}: ${said.trim().split('\n').at(-1) ?? ''}`,
        )
      else if (filled > 0) throw refuse('changes its size on the way; a reel has one size.')
    } finally {
      stop.signal.removeEventListener('abort', kill)
      kill()
      await ended
    }
  }
  return {
    frames: run(EACH_ONCE),
    kill: () => stop.abort(),
    isKilled: () => stop.signal.aborted,
  }
}
