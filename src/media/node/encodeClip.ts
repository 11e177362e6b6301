import { spawn } from 'node:child_process'
import { once } from 'node:events'
import { mkdtemp, readFile, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { PassPlan } from '../../core/transfer/passPlan.ts'
import { encoderArguments, SMALL_H264 } from './encoderArguments.ts'

/**
 * A small MP4 of H.264 of these pictures, by this machine's ffmpeg; undefined where it is not there
 * or refuses.
 */
export const encodeClip = async (
  plan: PassPlan,
  pictures: AsyncGenerator<Uint8Array<ArrayBuffer>>,
): Promise<{ readonly type: string; readonly bytes: Uint8Array } | undefined> => {
  const folder = await mkdtemp(join(tmpdir(), 'reelwright-clip-'))
  const path = join(folder, 'clip.mp4')
  try {
    const made = encoderArguments(plan, 'libx264', SMALL_H264)
    const child = spawn(
      'ffmpeg',
      ['-v', 'error', '-nostdin', '-y', ...made, '-movflags', '+faststart', `file:${path}`],
      { stdio: ['pipe', 'ignore', 'ignore'] },
    )
    child.stdin.on('error', () => {})
    const ended = new Promise<number>((resolve) => {
      child.once('error', () => resolve(1))
      child.once('close', (status) => resolve(status ?? 1))
    })
    try {
      for await (const picture of pictures) {
        if (child.exitCode !== null || child.stdin.destroyed) break
        if (!child.stdin.write(picture))
          await Promise.race([once(child.stdin, 'drain').catch(() => undefined), ended])
      }
    } finally {
      child.stdin.end()
    }
    return (await ended) === 0 ? { type: 'video/mp4', bytes: await readFile(path) } : undefined
  } finally {
    await rm(folder, { recursive: true, force: true })
  }
}
