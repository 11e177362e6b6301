import type { EncodedPacket, InputVideoTrack } from 'mediabunny'

type Mediabunny = typeof import('mediabunny')

/**
 * Some VP8 packets only change what later ones refer to and show nothing: show_frame, bit 4 of
 * the first byte (RFC 6386 §9.1).
 */
const isShownVp8 = (packet: EncodedPacket): boolean => ((packet.data[0] ?? 0) & 0x10) !== 0

/**
 * The time stamps of a track's pictures in order of presentation: frame N is the Nth of them,
 * whatever the numbers. In seconds, as the container gives them.
 */
export const presentationTimes = async (
  { EncodedPacketSink }: Mediabunny,
  track: InputVideoTrack,
): Promise<readonly number[]> => {
  const isVp8 = (await track.getCodec()) === 'vp8'
  const times: number[] = []
  const sink = new EncodedPacketSink(track)
  for await (const packet of sink.packets(undefined, undefined, { metadataOnly: !isVp8 }))
    if (!isVp8 || isShownVp8(packet)) times.push(packet.timestamp)
  return times.sort((a, b) => a - b)
}
