import { spawn } from 'node:child_process'
import { once } from 'node:events'
import { problem } from '../../core/base/problem.ts'
import type { PassPlan } from '../../core/transfer/passPlan.ts'
import { MediaError } from '../mediaError.ts'
import { encoderArguments, encodersOf } from './encoderArguments.ts'
import { NO_FFMPEG } from './probeVideo.ts'
import { runProgram } from './runProgram.ts'

/** A piece of video being written: pictures in order, then its end. */
export type VideoSegment = {
  /** Waits while the encoder is behind. Rejects with a `MediaError` where it has failed. */
  readonly write: (planes: Uint8Array) => Promise<void>
  readonly finish: () => Promise<void>
  readonly abandon: () => void
}

/** An encoder that is there: its name, and with the version of what runs it. */
export type FoundEncoder = { readonly name: string; readonly title: string }

/** SVT-AV1 refuses sides under 64 pixels (as found with version 1.4). */
const LEAST_AV1_SIDE = 64

/** The encoder of a format that this machine's ffmpeg has; rejects by name where it has none. */
export const findEncoder = async (plan: PassPlan): Promise<FoundEncoder> => {
  const wanted = encodersOf(plan.settings.format)
  const { status, out } = await runProgram('ffmpeg', ['-hide_banner', '-v', 'error', '-encoders'])
  if (status === undefined) throw new MediaError(NO_FFMPEG)
  const there = new Set(out.split('\n').map((line) => line.trim().split(/\s+/u)[1]))
  const found = wanted.find((encoder) => there.has(encoder))
  const { width, height } = plan.reel.media
  if (found === 'libsvtav1' && Math.min(width, height) < LEAST_AV1_SIDE)
    throw new MediaError(
      problem(
        'out-of-range',
        `A picture of ${width}×${height} is smaller than this machine's AV1 encoder takes (${LEAST_AV1_SIDE}×${LEAST_AV1_SIDE}); transfer to H.264, VP9 or a sequence.`,
        { field: 'transfer.format' },
      ),
    )
  if (found !== undefined) {
    const { out: told } = await runProgram('ffmpeg', ['-version'])
    const version = /version (\S+)/u.exec(told)?.[1] ?? 'of no version'
    return { name: found, title: `${found}, ffmpeg ${version}` }
  }
  throw new MediaError(
    problem(
      'cannot-decode',
      `This machine's ffmpeg has no encoder ${wanted.join(' or ')}; install one that has, or transfer to another format.`,
    ),
  )
}

/** Begins a file of video at `path`, in a container that keeps the exact rate (NUT). */
export const beginVideoSegment = (plan: PassPlan, encoder: string, path: string): VideoSegment => {
  const child = spawn(
    'ffmpeg',
    [
      ...['-v', 'error', '-nostdin', '-y', ...encoderArguments(plan, encoder)],
      ...['-f', 'nut', `file:${path}`],
    ],
    { stdio: ['pipe', 'ignore', 'pipe'] },
  )
  let said = ''
  child.stderr.setEncoding('utf8').on('data', (text: string) => {
    said = (said + text).slice(-2000)
  })
  const ended = new Promise<number>((resolve) => {
    child.once('error', () => resolve(1))
    child.once('close', (status) => resolve(status ?? 1))
  })
  // A pipe that breaks is told by how the program ends.
  child.stdin.on('error', () => {})
  const failed = (): MediaError =>
    new MediaError(
      problem(
        'cannot-read',
        `The video could not be written: ${said.trim().split('\n').at(-1) || 'ffmpeg ended early'}.`,
        { file: path },
      ),
    )
  return {
    write: async (planes) => {
      if (child.exitCode !== null || child.stdin.destroyed) throw failed()
      if (child.stdin.write(planes)) return
      await Promise.race([once(child.stdin, 'drain').catch(() => undefined), ended])
    },
    finish: async () => {
      child.stdin.end()
      if ((await ended) !== 0) throw failed()
    },
    abandon: () => void child.kill('SIGKILL'),
  }
}
