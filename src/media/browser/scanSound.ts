import {
  type AudioCodec,
  BlobSource,
  type EncodedPacket,
  EncodedPacketSink,
  Input,
  type InputAudioTrack,
  MATROSKA,
  MP4,
  MPEG_TS,
  QTFF,
  WEBM,
} from 'mediabunny'

/** Sound of a scan that a container can hold as it is coded. */
export type ScanSound = {
  readonly codec: AudioCodec
  readonly decoderConfig: AudioDecoderConfig
  /** Packets in order; `timestamp` in seconds from the reel's first picture, from 0 or just before. */
  readonly packets: () => AsyncGenerator<EncodedPacket>
  readonly close: () => void
}

/** What a scan has of sound: either what is carried, or why nothing is. */
export type FoundSound =
  | { readonly sound: ScanSound; readonly none: undefined }
  | { readonly sound: undefined; readonly none: string }

/** Sound that ends as the reel begins is no part of it, by more than a coder's run-up. */
const RUN_UP = 0.03

async function* packetsFrom(
  track: InputAudioTrack,
  firstPicture: number,
): AsyncGenerator<EncodedPacket> {
  for await (const packet of new EncodedPacketSink(track).packets()) {
    const timestamp = packet.timestamp - firstPicture
    if (timestamp + packet.duration > -RUN_UP) yield packet.clone({ timestamp })
  }
}

const none = (says: string): FoundSound => ({ sound: undefined, none: says })

const findIn = async (
  input: Input,
  name: string,
  container: string,
  held: readonly string[],
): Promise<FoundSound> => {
  const [track] = await input.getAudioTracks()
  if (!track) return none('The scan has no sound.')
  const codec = await track.getCodec()
  const decoderConfig = await track.getDecoderConfig().catch(() => null)
  if (codec === null || !held.includes(codec))
    return none(
      `The sound of ${name} is ${codec ?? 'of a kind not known here'}, which ${container} cannot hold as it is; it is left out.`,
    )
  if (!decoderConfig)
    return none(`The sound of ${name} does not say how it is coded; it is left out.`)
  const [pictures] = await input.getVideoTracks()
  const firstPicture = (await pictures?.getFirstTimestamp()) ?? 0
  return {
    sound: {
      ...{ codec, decoderConfig },
      packets: () => packetsFrom(track, firstPicture),
      close: () => input.dispose(),
    },
    none: undefined,
  }
}

/**
 * The first sound of a scan, where `container` holds its codec.
 * @param held codecs the container holds, by mediabunny's names
 */
export const findScanSound = async (
  files: readonly File[],
  container: string,
  held: readonly string[],
): Promise<FoundSound> => {
  const [file, second] = files
  if (!file || second) return none('The scan is pictures alone, without sound.')
  const input = new Input({
    formats: [MP4, QTFF, MATROSKA, WEBM, MPEG_TS],
    source: new BlobSource(file),
  })
  try {
    const found = (await input.canRead())
      ? await findIn(input, file.name, container, held)
      : none('The scan is pictures alone, without sound.')
    if (!found.sound) input.dispose()
    return found
  } catch (error) {
    input.dispose()
    const why = error instanceof Error ? error.message.replace(/\.$/u, '') : String(error)
    return none(`The sound of ${file.name} could not be read (${why}); it is left out.`)
  }
}
