import { problem } from '../../core/base/problem.ts'
import { fail, type Result } from '../../core/base/result.ts'
import type { FrameSource } from '../frameSource.ts'
import { openImageSequence } from '../imageSequence.ts'
import { isPictureKind, SNIFFED_BYTES, sniffContainer } from '../sniffContainer.ts'
import { openVideoFile } from './openVideoFile.ts'

/** What a file is by its first bytes; undefined too where it cannot be read. */
const kindOf = async (file: File): Promise<string | undefined> => {
  const beginning = await file
    .slice(0, SNIFFED_BYTES)
    .arrayBuffer()
    .catch(() => undefined)
  return beginning && sniffContainer(new Uint8Array(beginning))
}

/** The files a person chose or dropped, as one reel: a video, or the pictures of a sequence. */
export const openMedia = async (files: readonly File[]): Promise<Result<FrameSource>> => {
  const [first, second] = files
  if (!first) return fail(problem('missing', 'No file was chosen.'))
  if (isPictureKind(await kindOf(first)))
    return openImageSequence(
      files.map((file) => ({
        name: file.name,
        bytes: file.size,
        load: async () => new Uint8Array(await file.arrayBuffer()),
      })),
    )
  if (second)
    return fail(
      problem(
        'conflict',
        `${files.length} files were chosen, and ${first.name} is not a picture of a sequence; choose one video.`,
        { file: first.name },
      ),
    )
  return openVideoFile(first)
}
