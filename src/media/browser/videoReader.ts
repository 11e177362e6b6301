import type { InputVideoTrack, VideoSample, VideoSampleSink } from 'mediabunny'
import { problem } from '../../core/base/problem.ts'
import type { Planes } from '../../core/picture/planes.ts'
import { type Frame, frame } from '../../core/time/frame.ts'
import { MediaError } from '../mediaError.ts'
import { createPlanesCache } from '../planesCache.ts'
import { planesFromSample } from './planesFromSample.ts'

type Mediabunny = typeof import('mediabunny')

type ReadFrame = { readonly frame: Frame; readonly planes: Planes }

export type VideoReader = {
  readonly read: (wanted: Frame) => Promise<Planes>
  readonly readRange: (from: Frame, to: Frame, signal?: AbortSignal) => AsyncGenerator<ReadFrame>
  readonly close: () => void
}

/** Decoded frames kept, so that stepping back need not decode from a key frame each time. */
const CACHE_BYTES = 192 * 2 ** 20

/** Frames before the wanted one that are kept on the way to it. */
const KEPT_BEFORE = 12

/** A read this little ahead of the last one goes on decoding instead of seeking. */
const NEAR = 16

/** Reads a track's frames by their rank of presentation time. */
export const createVideoReader = (
  { VideoSampleSink }: Mediabunny,
  track: InputVideoTrack,
  times: readonly number[],
  name: string,
): VideoReader => {
  const cache = createPlanesCache(CACHE_BYTES)
  const sink = (acceleration?: HardwareAcceleration): VideoSampleSink =>
    new VideoSampleSink(
      track,
      acceleration === undefined ? {} : { hardwareAcceleration: acceleration },
    )
  let samples = sink()
  /** Some hardware decoders hand out pictures whose samples cannot be read: then, and once. */
  let isSoftware = false

  const unreadable = (at: Frame): MediaError =>
    new MediaError(
      problem(
        'cannot-decode',
        `Frame ${at} of ${name} cannot be decoded; the file may be damaged.`,
        {
          file: name,
          frame: at,
        },
      ),
    )
  const timeOf = (at: number): number => times[at] ?? Number.POSITIVE_INFINITY

  /** Rank of a time stamp: the frame whose own stamp is nearest. */
  const rankOf = (time: number): number => {
    let low = 0
    let high = times.length - 1
    while (low < high) {
      const middle = (low + high) >> 1
      if (timeOf(middle) < time - 1e-6) low = middle + 1
      else high = middle
    }
    return low
  }
  const take = async (sample: VideoSample, at: Frame): Promise<Planes | undefined> => {
    try {
      return await planesFromSample(sample)
    } catch {
      throw unreadable(at)
    } finally {
      sample.close()
    }
  }

  /** Frames `from` up to and not including `to`, each of them or an error. */
  async function* decode(from: Frame, to: number): AsyncGenerator<ReadFrame> {
    let next: number = from
    const stream = samples.samples(timeOf(from))
    try {
      for await (const sample of stream) {
        const at = frame(rankOf(sample.timestamp))
        if (at < next) {
          sample.close()
          continue
        }
        if (at > next) {
          sample.close()
          throw unreadable(frame(next))
        }
        const planes = await take(sample, at)
        if (!planes) break
        next++
        yield { frame: at, planes }
        if (next >= to) return
      }
    } catch (error) {
      throw error instanceof MediaError ? error : unreadable(frame(next))
    } finally {
      await stream.return()
    }
    if (isSoftware) throw unreadable(frame(next))
    isSoftware = true
    samples = sink('prefer-software')
    yield* decode(frame(next), to)
  }

  let ahead: { stream: AsyncGenerator<ReadFrame>; next: number } | undefined
  let last: Promise<unknown> = Promise.resolve()

  const endAhead = async (): Promise<void> => {
    const ending = ahead
    ahead = undefined
    await ending?.stream.return(undefined)
  }
  const readNow = async (wanted: Frame): Promise<Planes> => {
    const cached = cache.get(wanted)
    if (cached) return cached
    if (!ahead || wanted < ahead.next || wanted - ahead.next > NEAR) {
      await endAhead()
      const from = frame(Math.max(0, wanted - KEPT_BEFORE))
      ahead = { stream: decode(from, times.length), next: from }
    }
    const run = ahead
    try {
      for (;;) {
        const step = await run.stream.next()
        if (step.done) throw unreadable(wanted)
        run.next = step.value.frame + 1
        cache.put(step.value.frame, step.value.planes)
        if (step.value.frame === wanted) return step.value.planes
      }
    } catch (error) {
      await endAhead()
      throw error
    }
  }
  return {
    read: (wanted) => {
      const reading = last.then(() => readNow(wanted))
      last = reading.catch(() => undefined)
      return reading
    },
    readRange: async function* (from, to, signal) {
      for await (const step of decode(from, Math.min(to, times.length))) {
        if (signal?.aborted) return
        yield step
        if (signal?.aborted) return
      }
    },
    close: () => {
      void endAhead()
      cache.clear()
    },
  }
}
