import { type InputVideoTrack, type VideoSample, VideoSampleSink } from 'mediabunny'
import { problem } from '../../core/base/problem.ts'
import type { Planes } from '../../core/picture/planes.ts'
import { type Frame, frame } from '../../core/time/frame.ts'
import { MediaError } from '../mediaError.ts'
import { createPlanesCache, planesBytes } from '../planesCache.ts'
import { closedSource, noFrame } from '../refusals.ts'
import { firstAtOrAfter, lastAtOrBefore } from './findTime.ts'
import { planesFromSample } from './planesFromSample.ts'
import type { Presentation } from './presentationTimes.ts'

type ReadFrame = { readonly frame: Frame; readonly planes: Planes }

export type VideoReader = {
  readonly read: (wanted: Frame) => Promise<Planes>
  readonly readRange: (from: Frame, to: Frame, signal?: AbortSignal) => AsyncGenerator<ReadFrame>
  readonly close: () => void
}

/** Decoded frames kept, so that stepping back need not decode from a key frame each time. */
const CACHE_BYTES = 192 * 2 ** 20

/** Frames before the wanted one that are kept on the way to it, and when stepping backwards. */
const KEPT_BEFORE = 12
const KEPT_BEFORE_BACKWARDS = 48

/** A read this little ahead of the last one goes on decoding instead of seeking. */
const NEAR = 16

/** Reads a track's frames by their rank of presentation time. */
export const createVideoReader = (
  track: InputVideoTrack,
  { times, countedFrom }: Presentation,
  name: string,
  isRgb: boolean,
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
  /** The first picture's, which all the others must have. */
  let shape: Pick<Planes, 'width' | 'height' | 'depth' | 'layout'> | undefined
  /** Ends every decoding that is under way; set when the reader is closed. */
  const closing = new AbortController()

  const unreadable = (at: number, why = 'cannot be decoded; the file may be damaged'): MediaError =>
    new MediaError(
      problem('cannot-decode', `Frame ${at} of ${name} ${why}.`, { file: name, frame: at }),
    )

  const take = async (sample: VideoSample, at: number): Promise<Planes | undefined> => {
    const planes = await planesFromSample(sample, isRgb)
    if (!planes) return undefined
    shape ??= planes
    const { width, height, depth, layout } = planes
    const isAlike =
      width === shape.width &&
      height === shape.height &&
      depth === shape.depth &&
      layout === shape.layout
    if (!isAlike)
      throw unreadable(at, 'has another size or depth than the first; a reel has one of each')
    return planes
  }

  /** The frame a decoded picture is: the next in turn where they are counted or share a time. */
  const frameOf = (sample: VideoSample, next: number): number => {
    if (countedFrom) return next
    const at = firstAtOrAfter(times, sample.timestamp)
    return at < next && times[at] === times[next] ? next : at
  }

  /**
   * Frames `from` up to and not including `to`, each of them or an error. Ends early, without an
   * error, once `signal` aborts.
   */
  async function* decode(from: number, to: number, signal: AbortSignal): AsyncGenerator<ReadFrame> {
    const begin = countedFrom
      ? lastAtOrBefore(countedFrom, from)
      : firstAtOrAfter(times, times[from] ?? 0)
    let next = begin
    const stream = samples.samples(times[begin])
    const stop = (): void => void stream.return()
    signal.addEventListener('abort', stop)
    try {
      for await (const sample of stream) {
        try {
          const at = frameOf(sample, next)
          if (at < next) continue
          if (at > next) throw unreadable(next)
          if (at >= from) {
            const planes = await take(sample, at)
            if (!planes) break
            sample.close()
            yield { frame: frame(at), planes }
          }
          next++
        } finally {
          sample.close()
        }
        if (next >= to || signal.aborted) return
      }
    } catch (error) {
      if (signal.aborted) return
      throw error instanceof MediaError ? error : unreadable(next)
    } finally {
      signal.removeEventListener('abort', stop)
      await stream.return()
    }
    if (signal.aborted) return
    if (isSoftware) throw unreadable(next, 'cannot be read from this browser’s decoder')
    isSoftware = true
    samples = sink('prefer-software')
    yield* decode(Math.max(from, next), to, signal)
  }

  let ahead: { readonly stream: AsyncGenerator<ReadFrame>; next: number } | undefined
  let last: Promise<unknown> = Promise.resolve()

  /** The frame read last, and how large such frames are. */
  let latest = { frame: Number.NaN, bytes: 1 }

  /** Where to begin keeping frames on the way to one: earlier when the person steps backwards. */
  const keptFrom = (wanted: Frame): number => {
    const isBackwards = wanted < latest.frame && wanted >= latest.frame - 2
    const room = Math.floor(CACHE_BYTES / 2 / latest.bytes)
    const kept = isBackwards ? Math.min(KEPT_BEFORE_BACKWARDS, room) : KEPT_BEFORE
    return Math.max(0, wanted - kept)
  }

  const endAhead = async (): Promise<void> => {
    const ending = ahead
    ahead = undefined
    await ending?.stream.return(undefined)
  }
  const readNow = async (wanted: Frame): Promise<Planes> => {
    if (closing.signal.aborted) throw new MediaError(closedSource(name))
    if (times[wanted] === undefined) throw new MediaError(noFrame(name, wanted))
    const cached = cache.get(wanted)
    if (cached) return cached
    if (!ahead || wanted < ahead.next || wanted - ahead.next > NEAR) {
      await endAhead()
      const from = keptFrom(wanted)
      ahead = { stream: decode(from, times.length, closing.signal), next: from }
    }
    const run = ahead
    try {
      for (;;) {
        const step = await run.stream.next()
        if (closing.signal.aborted) throw new MediaError(closedSource(name))
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
  const readAndNote = async (wanted: Frame): Promise<Planes> => {
    const planes = await readNow(wanted)
    latest = { frame: wanted, bytes: planesBytes(planes) }
    return planes
  }
  return {
    read: (wanted) => {
      const reading = last.then(() => readAndNote(wanted))
      last = reading.catch(() => undefined)
      return reading
    },
    readRange: async function* (from, to, signal) {
      if (closing.signal.aborted) throw new MediaError(closedSource(name))
      const end = Math.min(to, times.length)
      if (from >= end || signal?.aborted) return
      const either = signal ? AbortSignal.any([signal, closing.signal]) : closing.signal
      yield* decode(from, end, either)
    },
    close: () => {
      closing.abort()
      void endAhead()
      cache.clear()
    },
  }
}
