import type { InputVideoTrack } from 'mediabunny'
import type { MatrixName, Planes, RangeName } from '../../core/picture/planes.ts'
import { type Rate, snapRate } from '../../core/time/rate.ts'
import { codecName } from '../codecNames.ts'
import { areTimesEven } from '../evenTimes.ts'
import type { MediaFacts } from '../mediaFacts.ts'

const CODECS: Readonly<Record<string, string>> = {
  avc: 'H.264',
  hevc: 'HEVC',
  vp8: 'VP8',
  vp9: 'VP9',
  av1: 'AV1',
  prores: 'ProRes',
  mpeg4: 'MPEG-4 Visual',
}

/** A codec in words; the identifier in the file where it has no other name here. */
export const codecWords = async (track: InputVideoTrack): Promise<string> => {
  const codec = await track.getCodec()
  if (codec !== null) return CODECS[codec] ?? codec.toUpperCase()
  const internal = await track.getInternalCodecId().catch(() => null)
  return typeof internal === 'string' ? codecName(internal) : 'unknown'
}

/** The luma equation a track states; a decoder's own guess is no statement. */
const statedMatrix = (matrix: string | null | undefined): MatrixName | undefined => {
  if (matrix === 'bt709') return 'bt709'
  if (matrix === 'smpte170m' || matrix === 'bt470bg') return 'bt601'
  return matrix === 'bt2020-ncl' ? 'bt2020' : undefined
}

/** Full range is stated; narrow range only where the track describes its colour at all. */
const statedRange = (space: VideoColorSpaceInit): RangeName | undefined => {
  if (space.fullRange === true) return 'full'
  const isDescribed = Boolean(space.matrix ?? space.primaries ?? space.transfer)
  return space.fullRange === false && isDescribed ? 'narrow' : undefined
}

const statedRate = async (
  track: InputVideoTrack,
  times: readonly number[],
): Promise<Rate | undefined> => {
  if (!areTimesEven(times)) return undefined
  const { bestGuessFrameRate } = await track.computeFrameRateMetrics()
  return Number.isFinite(bestGuessFrameRate) && bestGuessFrameRate > 0
    ? snapRate(bestGuessFrameRate)
    : undefined
}

/** What a track states of its pictures, and what its first picture shows. */
export const videoFacts = async (
  file: { readonly name: string; readonly size: number },
  container: string,
  track: InputVideoTrack,
  times: readonly number[],
  first: Planes,
): Promise<MediaFacts> => {
  const space = await track.getColorSpace()
  const { num, den } = await track.getPixelAspectRatio()
  return {
    name: file.name,
    container,
    codec: await codecWords(track),
    width: first.width,
    height: first.height,
    displayAspect: (first.width * num) / (den * first.height),
    depth: first.depth,
    layout: first.layout,
    frames: times.length,
    rate: await statedRate(track, times),
    matrix: first.layout === 'rgb' ? 'bt709' : statedMatrix(space.matrix),
    range: statedRange(space),
    ...(space.primaries && { primaries: space.primaries }),
    ...(space.transfer && { transfer: space.transfer }),
    bytes: file.size,
  }
}
