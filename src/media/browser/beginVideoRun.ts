import { problem } from '../../core/base/problem.ts'
import { framesPerSecond, type Rate } from '../../core/time/rate.ts'
import type { PassPlan } from '../../core/transfer/passPlan.ts'
import type { CodedPicture } from '../codedVideo.ts'
import { MediaError } from '../mediaError.ts'
import type { VideoEncoding, VideoRun } from '../videoTools.ts'
import { videoColour } from './videoColour.ts'

/** Pictures in the encoder at once; more would only fill memory. */
const MOST_IN_ENCODER = 8

const MICROSECONDS = 1e6

const timeOf = (at: number, { num, den }: Rate): number =>
  Math.round((at * MICROSECONDS * den) / num)

const placeOf = (time: number, { num, den }: Rate): number =>
  Math.round((time * num) / (den * MICROSECONDS))

const bytesOf = (source: AllowSharedBufferSource): Uint8Array<ArrayBuffer> =>
  ArrayBuffer.isView(source)
    ? new Uint8Array(source.buffer, source.byteOffset, source.byteLength).slice()
    : new Uint8Array(source).slice()

/**
 * An encoder for one run of pictures, with a key picture each second: what it writes depends on
 * nothing outside the run.
 */
export const beginVideoRun = (plan: PassPlan, { config, quantizer }: VideoEncoding): VideoRun => {
  const { rate, media } = plan.reel
  const second = Math.round(framesPerSecond(rate))
  const colorSpace = videoColour(plan)
  const pictures: CodedPicture[] = []
  let description: Uint8Array<ArrayBuffer> | undefined
  let codec = config.codec
  let failure: unknown
  let added = 0
  let wake = (): void => {}
  const encoder = new VideoEncoder({
    output: (chunk, told) => {
      const data = new Uint8Array(chunk.byteLength)
      chunk.copyTo(data)
      const { decoderConfig } = told ?? {}
      if (decoderConfig?.description) description = bytesOf(decoderConfig.description)
      if (decoderConfig) codec = decoderConfig.codec
      pictures.push({ at: placeOf(chunk.timestamp, rate), isKey: chunk.type === 'key', data })
    },
    error: (error) => {
      failure ??= error
      wake()
    },
  })
  encoder.addEventListener('dequeue', () => wake())
  encoder.configure(config)
  const broken = (): MediaError =>
    new MediaError(
      problem(
        'cannot-decode',
        `The browser's ${config.codec} encoder failed${failure instanceof Error ? `: ${failure.message.replace(/\.$/u, '')}` : ''}; go on with the pass, or choose another format.`,
      ),
    )
  const options = (keyFrame: boolean): VideoEncoderEncodeOptions =>
    quantizer === undefined
      ? { keyFrame }
      : { keyFrame, avc: { quantizer }, vp9: { quantizer }, av1: { quantizer } }
  const roomInEncoder = async (): Promise<void> => {
    while (encoder.encodeQueueSize >= MOST_IN_ENCODER && failure === undefined)
      await new Promise<void>((resolve) => {
        wake = resolve
      })
  }
  return {
    add: async (bytes, at) => {
      await roomInEncoder()
      if (failure !== undefined) throw broken()
      const timestamp = timeOf(at, rate)
      const picture = new VideoFrame(bytes, {
        ...{ format: 'I420', codedWidth: media.width, codedHeight: media.height, colorSpace },
        ...{ timestamp, duration: timeOf(at + 1, rate) - timestamp },
      })
      encoder.encode(picture, options(added % second === 0))
      picture.close()
      added++
    },
    finish: async () => {
      await encoder.flush().catch((error) => {
        failure ??= error
      })
      if (failure !== undefined) throw broken()
      encoder.close()
      if (pictures.length !== added || !pictures[0]?.isKey) {
        failure = new Error(`it wrote ${pictures.length} of ${added} pictures`)
        throw broken()
      }
      return { codec, description, pictures }
    },
    abandon: () => {
      if (encoder.state !== 'closed') encoder.close()
    },
  }
}
