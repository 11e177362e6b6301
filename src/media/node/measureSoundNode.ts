import { spawn } from 'node:child_process'
import { basename } from 'node:path'
import { problem } from '../../core/base/problem.ts'
import { fail, ok, type Result } from '../../core/base/result.ts'
import { createSoundMeter, type SoundFacts } from '../../core/sound/measureSound.ts'
import { runProgram } from './runProgram.ts'

const BYTES = 4

type Stream = { readonly sample_rate?: string; readonly channels?: number }

/** More channels than a broadcaster delivers are measured as none. */
const MOST_CHANNELS = 6

const probe = async (path: string): Promise<Result<{ rate: number; channels: number }>> => {
  const name = basename(path)
  const { status, out, error } = await runProgram('ffprobe', [
    ...['-v', 'error', '-of', 'json', '-select_streams', 'a:0'],
    ...['-show_entries', 'stream=sample_rate,channels', `file:${path}`],
  ])
  const at = { file: path }
  if (status === undefined)
    return fail(
      problem('cannot-decode', 'Sound is read through ffmpeg, which is not on the PATH.', at),
    )
  if (status !== 0)
    return fail(
      problem('cannot-read', `${name} cannot be read: ${error.trim().split('\n').at(-1)}.`, at),
    )
  const [stream] = (JSON.parse(out) as { streams?: readonly Stream[] }).streams ?? []
  const rate = Number(stream?.sample_rate)
  const channels = stream?.channels ?? 0
  if (!stream || !(rate > 0))
    return fail(problem('not-found', `${name} has no sound; give another file.`, at))
  if (channels < 1 || channels > MOST_CHANNELS)
    return fail(
      problem(
        'out-of-range',
        `${name} has ${channels} channels; 1 to ${MOST_CHANNELS} can be measured.`,
        at,
      ),
    )
  return ok({ rate, channels })
}

/** Interleaved samples as one array a channel. */
const apart = (samples: Float32Array, channels: number): readonly Float32Array[] =>
  Array.from({ length: channels }, (_, channel) =>
    Float32Array.from(
      { length: samples.length / channels },
      (__, i) => samples[i * channels + channel] ?? 0,
    ),
  )

/** The first sound of a file, measured through ffmpeg. */
export const measureSoundNode = async (path: string): Promise<Result<SoundFacts>> => {
  const probed = await probe(path)
  if (!probed.ok) return probed
  const { rate, channels } = probed.value
  const meter = createSoundMeter(rate, channels)
  const child = spawn(
    'ffmpeg',
    [
      ...['-v', 'error', '-nostdin', '-i', `file:${path}`, '-map', '0:a:0'],
      ...['-f', 'f32le', '-c:a', 'pcm_f32le', 'pipe:1'],
    ],
    { stdio: ['ignore', 'pipe', 'pipe'] },
  )
  let error = ''
  child.stderr.setEncoding('utf8').on('data', (text: string) => {
    error += text
  })
  const ended = new Promise<number>((resolve) => {
    child.once('error', () => resolve(1))
    child.once('close', (status) => resolve(status ?? 1))
  })
  const frame = BYTES * channels
  let rest: Uint8Array = new Uint8Array()
  for await (const chunk of child.stdout as AsyncIterable<Uint8Array>) {
    const bytes = new Uint8Array(rest.length + chunk.length)
    bytes.set(rest)
    bytes.set(chunk, rest.length)
    const whole = bytes.length - (bytes.length % frame)
    meter.push(apart(new Float32Array(bytes.buffer, 0, whole / BYTES), channels))
    rest = bytes.slice(whole)
  }
  if ((await ended) !== 0)
    return fail(
      problem(
        'cannot-decode',
        `${basename(path)} cannot be decoded to its end: ${error.trim().split('\n').at(-1)}.`,
        { file: path },
      ),
    )
  return ok(meter.finish())
}
