import { problem } from '../../core/base/problem.ts'
import { ok, type Result } from '../../core/base/result.ts'
import type { Planes } from '../../core/picture/planes.ts'
import { type Frame, frame } from '../../core/time/frame.ts'
import type { FrameSource } from '../frameSource.ts'
import { MediaError } from '../mediaError.ts'
import { createPlanesCache } from '../planesCache.ts'
import { closedSource, noFrame } from '../refusals.ts'
import { type FfmpegRun, type RunFrame, startFfmpeg } from './ffmpegFrames.ts'
import { probeVideo, type VideoFile } from './probeVideo.ts'

type Run = FfmpegRun & {
  /** The frame that is read next. */
  next: number
  /** A frame that came before its turn, as the one before it cannot be decoded. */
  ahead: RunFrame | undefined
}

/** Decoded frames kept for reading single ones. */
const CACHE_BYTES = 192 * 2 ** 20

/** Frames further on than this are sought; nearer ones are read up to. */
const NEAR = 48

/**
 * A compressed video by the person's own ffmpeg, which is started at the key frame before the
 * frame that is wanted (`startFfmpeg`); reading on from where the last reading ended goes on with
 * the same run of it, anything else begins a new one. Runs are never shared: each range under way,
 * and the reads together, have their own.
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
    if (idle && idle.next <= from && from - idle.next <= NEAR) {
      const run = idle
      idle = undefined
      return run
    }
    const run: Run = { ...startFfmpeg(file, video, from), next: from, ahead: undefined }
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
  const damaged = (at: number): MediaError => {
    const next = video.places?.keyAfter(at) ?? at + 1
    const shown = next > at + 1 ? `, and frames up to ${next - 1} may show it` : ''
    return new MediaError(
      problem(
        'cannot-decode',
        `Frame ${at} of ${name} cannot be decoded${shown}; the file may be damaged.`,
        { file: name, frame: at },
      ),
    )
  }
  /** The next picture that the run hands out; undefined at its end. */
  const pull = async (run: Run): Promise<RunFrame | undefined> => {
    try {
      const { done, value } = await run.frames.next()
      if (!done) return value
    } catch (error) {
      runs.delete(run)
      throw error
    }
    runs.delete(run)
    return undefined
  }
  /**
   * The frame `run.next`; undefined once there is none, the run's and so the video's end. One that
   * cannot be decoded rejects, and is passed over.
   */
  const step = async (run: Run): Promise<RunFrame | undefined> => {
    let given = run.ahead
    run.ahead = undefined
    while (!given || given.at < run.next) {
      given = await pull(run)
      if (given) continue
      if (run.isKilled()) return undefined
      if (run.hadErrors() && run.next < frames) throw damaged(run.next++)
      frames = run.next
      return undefined
    }
    if (given.at > run.next) {
      run.ahead = given
      throw damaged(run.next++)
    }
    run.next++
    return given
  }

  /** `step`, but damage before `from` is no matter of whoever reads from there. */
  const stepTowards = async (run: Run, from: number): Promise<RunFrame | undefined> => {
    for (;;)
      try {
        return await step(run)
      } catch (error) {
        if (run.next > from || run.ahead === undefined) throw error
      }
  }

  async function* readRange(from: Frame, to: Frame, signal?: AbortSignal) {
    if (isClosed) throw new MediaError(closedSource(name))
    if (signal?.aborted || from >= Math.min(to, frames)) return
    const run = acquire(from)
    signal?.addEventListener('abort', run.kill)
    let goesOn = false
    try {
      while (run.next < to) {
        const given = await stepTowards(run, from)
        if (!given || signal?.aborted) return
        if (given.at >= from) yield { frame: frame(given.at), planes: given.planes }
        if (signal?.aborted) return
      }
      goesOn = true
    } catch (error) {
      goesOn = run.ahead !== undefined
      throw error
    } finally {
      signal?.removeEventListener('abort', run.kill)
      await (goesOn ? release(run) : end(run))
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
        const given = await stepTowards(run, wanted)
        if (isClosed) throw new MediaError(closedSource(name))
        if (!given) throw new MediaError(noFrame(name, wanted))
        cache.put(frame(given.at), given.planes)
        if (given.at === wanted) return given.planes
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
