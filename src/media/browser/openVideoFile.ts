import type { Input } from 'mediabunny'
import { fail, ok, type Result } from '../../core/base/result.ts'
import { frame } from '../../core/time/frame.ts'
import { findDamage } from '../findDamage.ts'
import type { FrameSource } from '../frameSource.ts'
import { findIsoBoxes } from '../isoBoxes.ts'
import { type Edits, editsOf } from '../isoEdits.ts'
import { MediaError } from '../mediaError.ts'
import type { ReadAt } from '../readAt.ts'
import {
  damagedFile,
  editedFile,
  emptyFile,
  noPictures,
  undecodedCodec,
  unknownFile,
  unreadContainer,
  unreadPicture,
} from '../refusals.ts'
import { SNIFFED_FOR_CODEC, sniffCodec } from '../sniffCodec.ts'
import { isPictureKind, SNIFFED_BYTES, sniffContainer } from '../sniffContainer.ts'
import { presentationTimes } from './presentationTimes.ts'
import { codecWords, videoFacts } from './videoFacts.ts'
import { createVideoReader } from './videoReader.ts'

/** A file, or any bytes with a name. */
export type NamedBlob = Blob & { readonly name: string }

const messageOf = (error: unknown): string =>
  (error instanceof Error ? error.message : String(error)).replace(/\.$/u, '')

const readerOf =
  (file: Blob): ReadAt =>
  async (offset, length) =>
    new Uint8Array(await file.slice(offset, offset + length).arrayBuffer())

/**
 * A video file as frames. Reads MP4, MOV, Matroska, WebM and MPEG-TS with what this browser
 * decodes; anything else is refused by the names of container and codec.
 */
export const openVideoFile = async (file: NamedBlob): Promise<Result<FrameSource>> => {
  if (file.size === 0) return fail(emptyFile(file.name))
  let container: string | undefined
  let input: Input | undefined
  try {
    const readAt = readerOf(file)
    container = sniffContainer(await readAt(0, SNIFFED_BYTES))
    if (container === undefined) return fail(unknownFile(file.name))
    if (isPictureKind(container)) return fail(unreadPicture(file.name, container))
    const damage = await findDamage(file.name, container, file.size, readAt)
    if (damage) return fail(damage)
    const mediabunny = await import('mediabunny')
    const { BlobSource, MATROSKA, MP4, MPEG_TS, QTFF, WEBM } = mediabunny
    input = new mediabunny.Input({
      formats: [MP4, QTFF, MATROSKA, WEBM, MPEG_TS],
      source: new BlobSource(file),
    })
    const opened = await openTrack(mediabunny, input, file, container)
    if (!opened.ok) input.dispose()
    return opened
  } catch (error) {
    input?.dispose()
    if (error instanceof MediaError) return fail(error.problem)
    return fail(damagedFile(file.name, container ?? 'unknown', messageOf(error)))
  }
}

const LARGEST_TABLES = 256 * 2 ** 20

const readEdits = async (
  file: Blob,
  container: string,
  track: number,
): Promise<Edits | undefined> => {
  if (container !== 'MP4' && container !== 'MOV') return undefined
  const readAt = readerOf(file)
  const { movie } = await findIsoBoxes(file.size, readAt)
  if (!movie || movie.length > LARGEST_TABLES) return undefined
  return editsOf(await readAt(movie.offset, movie.length), track)
}

const openTrack = async (
  mediabunny: typeof import('mediabunny'),
  input: Input,
  file: NamedBlob,
  container: string,
): Promise<Result<FrameSource>> => {
  const { name } = file
  const beginning = () => readerOf(file)(0, SNIFFED_FOR_CODEC)
  if (!(await input.canRead()))
    return fail(unreadContainer(name, container, sniffCodec(container, await beginning())))
  const [track] = await input.getVideoTracks()
  if (!track) {
    const codec = sniffCodec(container, await beginning())
    return fail(
      codec === undefined ? noPictures(name, container) : undecodedCodec(name, container, codec),
    )
  }
  if (!(await track.canDecode())) {
    const codec = sniffCodec(container, await beginning()) ?? (await codecWords(track))
    return fail(undecodedCodec(name, container, codec))
  }
  const edits = await readEdits(file, container, track.id)
  if (edits && edits.stretches > 1) return fail(editedFile(name, edits.stretches))
  const presentation = await presentationTimes(mediabunny, track, edits?.end)
  const { times } = presentation
  if (times.length === 0)
    return fail(damagedFile(name, container, 'its video track holds no pictures'))
  const { matrix } = await track.getColorSpace()
  const isRgb = (matrix as string | null | undefined) === 'rgb'
  const reader = createVideoReader(mediabunny, track, presentation, name, isRgb)
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
