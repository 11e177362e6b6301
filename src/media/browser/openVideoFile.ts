import type { Input, InputVideoTrack } from 'mediabunny'
import { fail, ok, type Result } from '../../core/base/result.ts'
import { frame } from '../../core/time/frame.ts'
import type { FrameSource } from '../frameSource.ts'
import { MediaError } from '../mediaError.ts'
import {
  damagedFile,
  emptyFile,
  undecodedCodec,
  unknownFile,
  unreadContainer,
} from '../refusals.ts'
import { SNIFFED_BYTES, sniffContainer } from '../sniffContainer.ts'
import { presentationTimes } from './presentationTimes.ts'
import { codecWords, videoFacts } from './videoFacts.ts'
import { createVideoReader } from './videoReader.ts'

const messageOf = (error: unknown): string =>
  (error instanceof Error ? error.message : String(error)).replace(/\.$/u, '')

/**
 * A video file as frames. Reads MP4, MOV, Matroska, WebM and MPEG-TS with what this browser
 * decodes; anything else is refused by the names of container and codec.
 */
export const openVideoFile = async (file: File): Promise<Result<FrameSource>> => {
  if (file.size === 0) return fail(emptyFile(file.name))
  const beginning = new Uint8Array(await file.slice(0, SNIFFED_BYTES).arrayBuffer())
  const container = sniffContainer(beginning)
  const mediabunny = await import('mediabunny')
  const input = new mediabunny.Input({
    formats: mediabunny.ALL_FORMATS,
    source: new mediabunny.BlobSource(file),
  })
  try {
    if (!(await input.canRead())) {
      input.dispose()
      return fail(container ? unreadContainer(file.name, container) : unknownFile(file.name))
    }
    const opened = await openTrack(mediabunny, input, file, container)
    if (!opened.ok) input.dispose()
    return opened
  } catch (error) {
    input.dispose()
    if (error instanceof MediaError) return fail(error.problem)
    return fail(
      container ? damagedFile(file.name, container, messageOf(error)) : unknownFile(file.name),
    )
  }
}

const openTrack = async (
  mediabunny: typeof import('mediabunny'),
  input: Input,
  file: File,
  container = 'an unknown container',
): Promise<Result<FrameSource>> => {
  const tracks: InputVideoTrack[] = await input.getVideoTracks()
  const [track] = tracks
  if (!track)
    return fail(damagedFile(file.name, container, 'it holds no pictures that can be read'))
  if (!(await track.canDecode()))
    return fail(undecodedCodec(file.name, container, await codecWords(track)))
  const times = await presentationTimes(mediabunny, track)
  if (times.length === 0)
    return fail(damagedFile(file.name, container, 'its video track holds no pictures'))
  const reader = createVideoReader(mediabunny, track, times, file.name)
  const first = await reader.read(frame(0))
  const facts = await videoFacts(file, container, track, times.length, first)
  return ok({
    facts,
    read: reader.read,
    readRange: reader.readRange,
    close: () => {
      reader.close()
      input.dispose()
    },
  })
}
