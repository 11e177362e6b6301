import { problem } from '../../core/base/problem.ts'
import { ok, type Result } from '../../core/base/result.ts'
import type { Planes } from '../../core/picture/planes.ts'
import { type Frame, frame } from '../../core/time/frame.ts'
import type { FrameSource } from '../frameSource.ts'
import { MediaError } from '../mediaError.ts'
import { ffmpegFrames } from './ffmpegFrames.ts'
import { probeVideo } from './probeVideo.ts'

type Run = { readonly frames: AsyncGenerator<Planes>; next: number }

/**
 * A compressed video by the person's own ffmpeg. Frames are counted as they come, from the first,
 * so that frame N is frame N whatever the time stamps; reading on from where the last range ended
 * goes on with the same run, anything else begins anew.
 */
export const openFfmpegSource = async (
  path: string,
  bytes: number,
): Promise<Result<FrameSource>> => {
  const probed = await probeVideo(path, bytes)
  if (!probed.ok) return probed
  const video = probed.value
  let run: Run | undefined

  const end = async (): Promise<void> => {
    const ending = run
    run = undefined
    await ending?.frames.return(undefined)
  }
  const runFrom = async (from: number): Promise<Run> => {
    if (!run || run.next > from) {
      await end()
      run = { frames: ffmpegFrames(path, video), next: 0 }
    }
    return run
  }
  async function* readRange(from: Frame, to: Frame, signal?: AbortSignal) {
    const mine = await runFrom(from)
    while (mine.next < to && !signal?.aborted) {
      const step = await mine.frames.next()
      if (step.done) return
      const at = mine.next++
      if (at >= from) yield { frame: frame(at), planes: step.value }
    }
  }
  return ok({
    facts: video.facts,
    readRange,
    read: async (wanted) => {
      for await (const { planes } of readRange(wanted, frame(wanted + 1))) return planes
      throw new MediaError(
        problem('not-found', `There is no frame ${wanted} in ${video.facts.name}.`, {
          frame: wanted,
        }),
      )
    },
    close: () => void end(),
  })
}
