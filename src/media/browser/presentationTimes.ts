import { type EncodedPacket, EncodedPacketSink, type InputVideoTrack } from 'mediabunny'

/** When a track's pictures are shown, in order of presentation. Frame N is the Nth of them. */
export type Presentation = {
  /** Seconds, as the container gives them; several pictures may share one. */
  readonly times: readonly number[]
  /**
   * Frames that decoding can begin at, where pictures must be counted from there because packets
   * that show nothing lie between them; undefined where a picture's own time tells its frame.
   */
  readonly countedFrom: readonly number[] | undefined
}

/**
 * Some VP8 packets only change what later ones refer to and show nothing: show_frame, bit 4 of
 * the first byte (RFC 6386 §9.1).
 */
const isShownVp8 = (packet: EncodedPacket): boolean => ((packet.data[0] ?? 0) & 0x10) !== 0

/** Edit lists count in coarser units than stamps; far less than a picture lasts. */
const ROUNDING = 0.001

/** VP8 stores pictures in the order they are shown, so that they can be counted. */
const countedTimes = async (packets: AsyncIterable<EncodedPacket>): Promise<Presentation> => {
  const times: number[] = []
  const countedFrom: number[] = []
  for await (const packet of packets) {
    if (!isShownVp8(packet)) continue
    if (packet.type === 'key') countedFrom.push(times.length)
    times.push(packet.timestamp)
  }
  return { times, countedFrom }
}

/**
 * Lists a track's pictures. Those that an edit list leaves out, before the beginning (negative
 * times) or from `end` seconds on, are not presented and so are no frames: ISO/IEC 14496-12
 * §8.6.6.
 */
export const presentationTimes = async (
  track: InputVideoTrack,
  end = Number.POSITIVE_INFINITY,
): Promise<Presentation> => {
  const sink = new EncodedPacketSink(track)
  if ((await track.getCodec()) === 'vp8') return countedTimes(sink.packets())
  const times: number[] = []
  for await (const packet of sink.packets(undefined, undefined, { metadataOnly: true }))
    times.push(packet.timestamp)
  times.sort((a, b) => a - b)
  const shown = times.filter((time) => time >= -ROUNDING && time < end - ROUNDING)
  return { times: shown.length > 0 ? shown : times, countedFrom: undefined }
}
