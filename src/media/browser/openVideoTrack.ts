import { BlobSource, Input, MATROSKA, MP4, MPEG_TS, QTFF, WEBM } from 'mediabunny'
import { fail, ok, type Result } from '../../core/base/result.ts'
import { frame } from '../../core/time/frame.ts'
import type { FrameSource } from '../frameSource.ts'
import { findIsoBoxes } from '../isoBoxes.ts'
import { type Edits, editsOf } from '../isoEdits.ts'
import {
  damagedFile,
  editedFile,
  noPictures,
  undecodedCodec,
  unreadContainer,
} from '../refusals.ts'
import { SNIFFED_FOR_CODEC, sniffCodec } from '../sniffCodec.ts'
import { blobReader, type NamedBlob } from './namedBlob.ts'
import { presentationTimes } from './presentationTimes.ts'
import { codecWords, videoFacts } from './videoFacts.ts'
import { createVideoReader } from './videoReader.ts'

/** Not playlists, which lead on to other files and addresses. */
const FORMATS = [MP4, QTFF, MATROSKA, WEBM, MPEG_TS]

const LARGEST_TABLES = 256 * 2 ** 20

const readEdits = async (
  file: Blob,
  container: string,
  track: number,
): Promise<Edits | undefined> => {
  if (container !== 'MP4' && container !== 'MOV') return undefined
  const readAt = blobReader(file)
  const { movie } = await findIsoBoxes(file.size, readAt)
  if (!movie || movie.length > LARGEST_TABLES) return undefined
  return editsOf(await readAt(movie.offset, movie.length), track)
}

/**
 * No browser decodes ProRes itself; the decoder is fetched only when a file needs it. Where it
 * cannot be fetched, the track stays one that cannot be decoded.
 */
const addProresDecoder = async (): Promise<void> => {
  const fetched = await import('@mediabunny/prores').catch(() => undefined)
  fetched?.registerProresDecoder()
}

const openTrack = async (
  input: Input,
  file: NamedBlob,
  container: string,
): Promise<Result<FrameSource>> => {
  const { name } = file
  const beginning = () => blobReader(file)(0, SNIFFED_FOR_CODEC)
  if (!(await input.canRead()))
    return fail(unreadContainer(name, container, sniffCodec(container, await beginning())))
  const [track] = await input.getVideoTracks()
  if (!track) {
    const codec = sniffCodec(container, await beginning())
    return fail(
      codec === undefined ? noPictures(name, container) : undecodedCodec(name, container, codec),
    )
  }
  if ((await track.getCodec()) === 'prores') await addProresDecoder()
  if (!(await track.canDecode())) {
    const codec = sniffCodec(container, await beginning()) ?? (await codecWords(track))
    return fail(undecodedCodec(name, container, codec))
  }
  const edits = await readEdits(file, container, track.id)
  if (edits && edits.stretches > 1) return fail(editedFile(name, edits.stretches))
  const presentation = await presentationTimes(track, edits?.end)
  const { times } = presentation
  if (times.length === 0)
    return fail(damagedFile(name, container, 'its video track holds no pictures'))
  const { matrix } = await track.getColorSpace()
  const isRgb = (matrix as string | null | undefined) === 'rgb'
  const reader = createVideoReader(track, presentation, name, isRgb)
  try {
    const first = await reader.read(frame(0))
    const facts = await videoFacts(file, container, track, times, first)
    return ok({
      facts,
      read: reader.read,
      readRange: reader.readRange,
      close: () => {
        reader.close()
        input.dispose()
      },
    })
  } catch (error) {
    reader.close()
    throw error
  }
}

/**
 * Opens the first video track of a file whose container is known. This module and what it takes
 * in are loaded only when a video is opened. Throws where the file is damaged.
 */
export const openVideoTrack = async (
  file: NamedBlob,
  container: string,
): Promise<Result<FrameSource>> => {
  const input = new Input({ formats: FORMATS, source: new BlobSource(file) })
  try {
    const opened = await openTrack(input, file, container)
    if (!opened.ok) input.dispose()
    return opened
  } catch (error) {
    input.dispose()
    throw error
  }
}
