import {
  EncodedAudioPacketSource,
  EncodedPacket,
  EncodedVideoPacketSource,
  Mp4OutputFormat,
  Output,
  StreamTarget,
  type VideoCodec,
  WebMOutputFormat,
} from 'mediabunny'
import { problem } from '../../core/base/problem.ts'
import { framesPerSecond } from '../../core/time/rate.ts'
import type { PassPlan } from '../../core/transfer/passPlan.ts'
import type { TransferFormat } from '../../core/transfer/transferSettings.ts'
import type { CodedVideo } from '../codedVideo.ts'
import { MediaError } from '../mediaError.ts'
import type { CarriedSound, JoinedVideo } from '../videoTools.ts'
import { type FoundSound, findScanSound, type ScanSound } from './scanSound.ts'
import { videoColour } from './videoColour.ts'

const CODECS: Readonly<Partial<Record<TransferFormat, VideoCodec>>> = {
  h264: 'avc',
  vp9: 'vp9',
  av1: 'av1',
}

/** Bytes gathered before they are written. */
const CHUNK = 4 * 2 ** 20

const PARTS = 10_000

const decoderConfigOf = (
  { reel, coding }: PassPlan,
  { codec, description }: CodedVideo,
  colorSpace: VideoColorSpaceInit,
): VideoDecoderConfig => {
  const { width, height } = reel.media
  const aspect = coding.pixelAspect ?? 1
  const isSquare = Math.abs(aspect - 1) < 0.001
  return {
    ...{ codec, codedWidth: width, codedHeight: height, colorSpace },
    ...(description && { description }),
    ...(!isSquare && {
      displayAspectWidth: Math.round(width * aspect * PARTS),
      displayAspectHeight: height * PARTS,
    }),
  }
}

const isSame = (a: Uint8Array | undefined, b: Uint8Array | undefined): boolean =>
  a?.length === b?.length && (a?.every((byte, i) => byte === b?.[i]) ?? true)

const otherEncoder = (): MediaError =>
  new MediaError(
    problem(
      'conflict',
      'The parts of this pass come from encoders that do not agree, as after the browser was renewed; discard it and begin anew.',
    ),
  )

/** Feeds the sound that lies before a time, so that sound and pictures are written side by side. */
const createSoundFeed = (
  { packets, decoderConfig }: ScanSound,
  source: EncodedAudioPacketSource,
  shift: number,
  end: number,
  leastTime: number,
) => {
  const iterator = packets()
  let waiting: EncodedPacket | undefined
  let count = 0
  const feed = async (until: number): Promise<void> => {
    for (;;) {
      waiting ??= (await iterator.next()).value ?? undefined
      if (!waiting) return
      const timestamp = waiting.timestamp + shift
      if (timestamp >= Math.min(until, end)) return
      if (timestamp >= leastTime) {
        await source.add(waiting.clone({ timestamp }), count === 0 ? { decoderConfig } : undefined)
        count++
      }
      waiting = undefined
    }
  }
  return { feed, count: () => count }
}

const carried = ({ sound, none }: FoundSound, packets: number): CarriedSound => {
  if (sound && packets === 0)
    return {
      isCarried: false,
      says: 'The scan’s sound lies outside its pictures; none goes along.',
    }
  return sound
    ? { isCarried: true, says: `The scan's ${sound.codec} sound goes along as it is.` }
    : { isCarried: false, says: none }
}

/** Writes one video of runs that were encoded apart, with the scan's sound beside it. */
export const joinVideo = async (video: JoinedVideo): Promise<CarriedSound> => {
  const { plan, runs, scan, write, onRun, signal } = video
  const { settings, reel, timeline } = plan
  const codec = CODECS[settings.format]
  if (!codec) throw new Error(`Bug: ${settings.format} is no video`)
  const isMp4 = settings.format === 'h264'
  const format = isMp4 ? new Mp4OutputFormat({ fastStart: false }) : new WebMOutputFormat()
  const found: FoundSound = settings.carriesSound
    ? await findScanSound(scan, isMp4 ? 'MP4' : 'WebM', format.getSupportedAudioCodecs())
    : { sound: undefined, none: 'No sound was asked for.' }
  const target = new StreamTarget(new WritableStream({ write }), {
    chunked: true,
    chunkSize: CHUNK,
  })
  const output = new Output({ format, target })
  const pictures = new EncodedVideoPacketSource(codec)
  output.addVideoTrack(pictures, { frameRate: framesPerSecond(reel.rate) })
  const frameSeconds = reel.rate.den / reel.rate.num
  const colorSpace = videoColour(plan)
  let sound = { feed: async (_until: number): Promise<void> => {}, count: () => 0 }
  if (found.sound) {
    const source = new EncodedAudioPacketSource(found.sound.codec)
    output.addAudioTrack(source)
    const head = timeline.headFrames * frameSeconds
    const leastTime = isMp4 ? Number.NEGATIVE_INFINITY : 0
    const end = timeline.frames * frameSeconds
    sound = createSoundFeed(found.sound, source, head, end, leastTime)
  }
  try {
    await output.start()
    let first: CodedVideo | undefined
    for (const [index, read] of runs.entries()) {
      signal.throwIfAborted()
      const run = await read()
      if (first && (run.codec !== first.codec || !isSame(run.description, first.description)))
        throw otherEncoder()
      for (const { at, isKey, data } of run.pictures) {
        await sound.feed(at * frameSeconds)
        const packet = new EncodedPacket(
          data,
          isKey ? 'key' : 'delta',
          at * frameSeconds,
          frameSeconds,
        )
        const meta = first ? undefined : { decoderConfig: decoderConfigOf(plan, run, colorSpace) }
        await pictures.add(packet, meta)
        first ??= run
      }
      onRun(index + 1)
    }
    await sound.feed(Number.POSITIVE_INFINITY)
    await output.finalize()
    return carried(found, sound.count())
  } catch (error) {
    await output.cancel().catch(() => {})
    throw error
  } finally {
    found.sound?.close()
  }
}
