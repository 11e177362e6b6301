import { spawn } from 'node:child_process'
import { problem } from '../../core/base/problem.ts'
import { chromaHeight, chromaWidth, type Planes, type Samples } from '../../core/picture/planes.ts'
import { MediaError } from '../mediaError.ts'
import { fileUrl, NO_FFMPEG, type ProbedVideo, SAFE_INPUT } from './probeVideo.ts'

/** Takes the three planes of a raw picture apart. ffmpeg's planar RGB comes as G, B, R. */
const planesFrom = (bytes: Uint8Array, { facts }: ProbedVideo): Planes => {
  const { width, height, layout, depth } = facts
  const bytesEach = depth > 8 ? 2 : 1
  const luma = width * height
  const chroma = chromaWidth(layout, width) * chromaHeight(layout, height)
  const plane = (from: number, count: number): Samples =>
    depth > 8
      ? new Uint16Array(bytes.buffer, bytes.byteOffset + from * bytesEach, count)
      : bytes.subarray(from, from + count)
  const [first, second, third] = [
    plane(0, luma),
    plane(luma, chroma),
    plane(luma + chroma, chroma),
  ] as const
  const samples =
    layout === 'rgb' ? ([third, first, second] as const) : ([first, second, third] as const)
  return { width, height, layout, depth, samples }
}

const frameBytes = ({ facts: { width, height, layout, depth } }: ProbedVideo): number =>
  (width * height + 2 * chromaWidth(layout, width) * chromaHeight(layout, height)) *
  (depth > 8 ? 2 : 1)

/**
 * Every picture of a video in order of presentation, each exactly once, as ffmpeg decodes it. The
 * program is ended when the reading ends, however it ends.
 */
export async function* ffmpegFrames(path: string, video: ProbedVideo): AsyncGenerator<Planes> {
  const child = spawn(
    'ffmpeg',
    [
      ...['-v', 'error', '-nostdin', ...SAFE_INPUT, '-i', fileUrl(path)],
      ...['-map', `0:${video.stream}`, '-fps_mode', 'passthrough'],
      ...['-f', 'rawvideo', '-pix_fmt', video.pixelFormat, 'pipe:1'],
    ],
    { stdio: ['ignore', 'pipe', 'pipe'] },
  )
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
  try {
    for await (const chunk of child.stdout as AsyncIterable<Uint8Array>) {
      let from = 0
      while (from < chunk.length) {
        const count = Math.min(chunk.length - from, size - filled)
        bytes.set(chunk.subarray(from, from + count), filled)
        filled += count
        from += count
        if (filled < size) continue
        yield planesFrom(bytes, video)
        bytes = new Uint8Array(size)
        filled = 0
      }
    }
    const status = await ended
    if (isAbsent) throw new MediaError(NO_FFMPEG)
    if (status !== 0)
      throw new MediaError(
        problem(
          'cannot-decode',
          `${video.facts.name} cannot be decoded to its end: ${said.trim().split('\n').at(-1) ?? ''}`,
          { file: path },
        ),
      )
  } finally {
    child.kill('SIGKILL')
  }
}
