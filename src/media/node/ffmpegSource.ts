import { ok, type Result } from '../../core/base/result.ts'
import type { Planes } from '../../core/picture/planes.ts'
import { type Frame, frame } from '../../core/time/frame.ts'
import type { FrameSource } from '../frameSource.ts'
import { MediaError } from '../mediaError.ts'
import { createPlanesCache } from '../planesCache.ts'
import { closedSource, noFrame } from '../refusals.ts'
import { type FfmpegRun, startFfmpeg } from './ffmpegFrames.ts'
import { probeVideo, type VideoFile } from './probeVideo.ts'

type Run = FfmpegRun & { next: number }

/** Decoded frames kept for reading single ones. */
const CACHE_BYTES = 192 * 2 ** 20

/**
 * A compressed video by the person's own ffmpeg. Frames are counted as they come, from the first,
 * so that frame N is frame N whatever the time stamps; reading on from where the last reading
 * ended goes on with the same run of ffmpeg, anything else begins a new one. Runs are never
 * shared: each range under way, and the reads together, have their own.
 *
 * `facts.frames` is what the packets promise until a run has reached the end, and what there
 * really are from then on.
 */
export const openFfmpegSource = async (file: VideoFile): Promise<Result<FrameSource>> => {
  const probed = await probeVideo(file)
  if (!probed.ok) return probed
  const video = probed.value
  const { name } = video.facts
  const cache = createPlanesCache(CACHE_BYTES)
  let { frames } = video.facts
  let isClosed = false
  /** All runs not yet ended, and the one of them that nobody reads from at the moment. */
  const runs = new Set<Run>()
  let idle: Run | undefined

  const end = async (run: Run): Promise<void> => {
    runs.delete(run)
    if (idle === run) idle = undefined
    run.kill()
    await run.frames.return(undefined)
  }
  const acquire = (from: number): Run => {
    if (idle && idle.next <= from) {
      const run = idle
      idle = undefined
      return run
    }
    const run = { ...startFfmpeg(file, video), next: 0 }
    runs.add(run)
    return run
  }
  const release = async (run: Run): Promise<void> => {
    if (!runs.has(run)) return
    if (isClosed) return end(run)
    const previous = idle
    idle = run
    if (previous) await end(previous)
  }
  /** The next frame; undefined once there is none, the run's and so the video's end. */
  const step = async (run: Run): Promise<Planes | undefined> => {
    try {
      const { done, value } = await run.frames.next()
      if (!done) {
        run.next++
        return value
      }
      if (!run.isKilled()) frames = run.next
    } catch (error) {
      runs.delete(run)
      throw error
    }
    runs.delete(run)
    return undefined
  }

  async function* readRange(from: Frame, to: Frame, signal?: AbortSignal) {
    if (isClosed) throw new MediaError(closedSource(name))
    if (signal?.aborted || from >= to) return
    const run = acquire(from)
    signal?.addEventListener('abort', run.kill)
    let isWhole = false
    try {
      while (run.next < to) {
        const at = run.next
        const planes = await step(run)
        if (!planes || signal?.aborted) return
        if (at >= from) yield { frame: frame(at), planes }
        if (signal?.aborted) return
      }
      isWhole = true
    } finally {
      signal?.removeEventListener('abort', run.kill)
      await (isWhole ? release(run) : end(run))
    }
  }
  const readNow = async (wanted: Frame): Promise<Planes> => {
    if (isClosed) throw new MediaError(closedSource(name))
    const cached = cache.get(wanted)
    if (cached) return cached
    if (wanted < 0 || wanted >= frames) throw new MediaError(noFrame(name, wanted))
    const run = acquire(wanted)
    try {
      for (;;) {
        const at = run.next
        const planes = await step(run)
        if (isClosed) throw new MediaError(closedSource(name))
        if (!planes) throw new MediaError(noFrame(name, wanted))
        cache.put(frame(at), planes)
        if (at === wanted) return planes
      }
    } finally {
      await release(run)
    }
  }
  let last: Promise<unknown> = Promise.resolve()
  return ok({
    get facts() {
      return { ...video.facts, frames }
    },
    readRange,
    read: (wanted) => {
      const reading = last.then(() => readNow(wanted))
      last = reading.catch(() => undefined)
      return reading
    },
    close: () => {
      isClosed = true
      cache.clear()
      for (const run of runs) void end(run)
    },
  })
}
