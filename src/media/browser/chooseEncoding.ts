import { problem } from '../../core/base/problem.ts'
import { fail, ok, type Result } from '../../core/base/result.ts'
import { framesPerSecond } from '../../core/time/rate.ts'
import type { PassPlan } from '../../core/transfer/passPlan.ts'
import { TRANSFER_FORMAT_FACTS, type TransferFormat } from '../../core/transfer/transferSettings.ts'
import type { VideoEncoding } from '../videoTools.ts'

type Codec = {
  readonly name: string
  /** The lowest profile first; of one codec the lowest level that holds the picture is taken. */
  readonly strings: readonly string[]
  /**
   * Quantizers: high enough to hand over, and small enough to be sent to be looked at; by common
   * practice, no published source.
   */
  readonly quantizer: number
  readonly smallQuantizer: number
}

/** Levels by their numbers: H.264 High 3.1, 4.0, 5.1, 5.2; VP9 profile 0; AV1 main, 8 bits. */
const CODECS: Readonly<Partial<Record<TransferFormat, Codec>>> = {
  h264: {
    name: 'H.264',
    strings: ['avc1.64001f', 'avc1.640028', 'avc1.640033', 'avc1.640034'],
    quantizer: 14,
    smallQuantizer: 27,
  },
  vp9: {
    name: 'VP9',
    strings: ['vp09.00.31.08', 'vp09.00.40.08', 'vp09.00.51.08', 'vp09.00.61.08'],
    quantizer: 12,
    smallQuantizer: 36,
  },
  av1: {
    name: 'AV1',
    strings: ['av01.0.05M.08', 'av01.0.08M.08', 'av01.0.13M.08', 'av01.0.16M.08'],
    quantizer: 12,
    smallQuantizer: 36,
  },
}

/** Bits a pixel where an encoder holds a rate: four times what is common for delivery. */
const BITS_A_PIXEL = 0.8

const isSupported = (config: VideoEncoderConfig): Promise<boolean> =>
  VideoEncoder.isConfigSupported(config).then(
    ({ supported }) => supported === true,
    () => false,
  )

/** The same for a clip that is sent to be looked at. */
const SMALL_BITS_A_PIXEL = 0.15

/**
 * How this browser encodes the video of a plan: at constant quality, or at a bit rate. A small one
 * is to be looked at, not to be handed over.
 */
export const chooseEncoding = async (
  plan: PassPlan,
  isSmall = false,
): Promise<Result<VideoEncoding>> => {
  const { settings, reel } = plan
  const { width, height } = reel.media
  const codec = CODECS[settings.format]
  if (!codec) throw new Error(`Bug: ${settings.format} is no video`)
  const framerate = framesPerSecond(reel.rate)
  const quantizer = isSmall ? codec.smallQuantizer : codec.quantizer
  const bits = isSmall ? SMALL_BITS_A_PIXEL : BITS_A_PIXEL
  const bitrate = Math.round(bits * width * height * framerate)
  if (typeof VideoEncoder !== 'undefined')
    for (const bitrateMode of ['quantizer', 'variable'] as const)
      for (const name of codec.strings) {
        const config: VideoEncoderConfig = {
          ...{ codec: name, width, height, framerate, bitrateMode, latencyMode: 'quality' },
          ...(bitrateMode === 'variable' && { bitrate }),
          ...(settings.format === 'h264' && { avc: { format: 'avc' } }),
        }
        if (!(await isSupported(config))) continue
        return ok(
          bitrateMode === 'quantizer'
            ? {
                config,
                quantizer,
                words: `${codec.name} at quantizer ${quantizer}`,
              }
            : {
                config,
                quantizer: undefined,
                words: `${codec.name} at ${(bitrate / 1e6).toFixed(1)} Mbit/s`,
              },
        )
      }
  return fail(
    problem(
      'cannot-decode',
      `This browser cannot encode ${TRANSFER_FORMAT_FACTS[settings.format].title} at ${width}×${height}; choose another format, or transfer at the command line.`,
      { field: 'transfer.format' },
    ),
  )
}
