import { problem } from '../../core/base/problem.ts'
import { fail, type Result } from '../../core/base/result.ts'
import { findDamage } from '../findDamage.ts'
import type { FrameSource } from '../frameSource.ts'
import { MediaError } from '../mediaError.ts'
import { damagedFile, emptyFile, unknownFile, unreadPicture } from '../refusals.ts'
import { isPictureKind, SNIFFED_BYTES, sniffContainer } from '../sniffContainer.ts'
import { blobReader, type NamedBlob } from './namedBlob.ts'

const messageOf = (error: unknown): string =>
  (error instanceof Error ? error.message : String(error)).replace(/\.$/u, '')

/** The reader of video, which is fetched when it is first wanted. */
const videoTools = async (): Promise<typeof import('./openVideoTrack.ts').openVideoTrack> => {
  try {
    return (await import('./openVideoTrack.ts')).openVideoTrack
  } catch {
    throw new MediaError(
      problem(
        'cannot-read',
        'The part of this program that reads video could not be fetched; load the page again.',
      ),
    )
  }
}

/**
 * A video file as frames. Reads MP4, MOV, Matroska, WebM and MPEG-TS with what this browser
 * decodes; anything else is refused by the names of container and codec.
 */
export const openVideoFile = async (file: NamedBlob): Promise<Result<FrameSource>> => {
  if (file.size === 0) return fail(emptyFile(file.name))
  let container: string | undefined
  try {
    const readAt = blobReader(file)
    container = sniffContainer(await readAt(0, SNIFFED_BYTES))
    if (container === undefined) return fail(unknownFile(file.name))
    if (isPictureKind(container)) return fail(unreadPicture(file.name, container))
    const damage = await findDamage(file.name, container, file.size, readAt)
    if (damage) return fail(damage)
    return await (await videoTools())(file, container)
  } catch (error) {
    if (error instanceof MediaError) return fail(error.problem)
    return fail(damagedFile(file.name, container ?? 'unknown', messageOf(error)))
  }
}
