import { open, readdir, readFile, stat } from 'node:fs/promises'
import { basename, dirname, join, resolve } from 'node:path'
import { problem } from '../../core/base/problem.ts'
import { fail, type Result } from '../../core/base/result.ts'
import type { FrameSource } from '../frameSource.ts'
import { openImageSequence, type PictureFile } from '../imageSequence.ts'
import { numberedName } from '../numberedFiles.ts'
import { emptyFile } from '../refusals.ts'
import { SNIFFED_BYTES, sniffContainer } from '../sniffContainer.ts'
import { openFfmpegSource } from './ffmpegSource.ts'

const PICTURE = /\.(png|tiff?)$/iu

const pictureFile = async (path: string): Promise<PictureFile> => ({
  name: basename(path),
  bytes: (await stat(path)).size,
  load: async () => new Uint8Array(await readFile(path)),
})

const beginningOf = async (path: string): Promise<Uint8Array> => {
  const file = await open(path)
  try {
    const { buffer, bytesRead } = await file.read(
      new Uint8Array(SNIFFED_BYTES),
      0,
      SNIFFED_BYTES,
      0,
    )
    return buffer.subarray(0, bytesRead)
  } finally {
    await file.close()
  }
}

const openFolder = async (folder: string, isWanted: (name: string) => boolean) => {
  const names = (await readdir(folder)).filter((name) => PICTURE.test(name) && isWanted(name))
  if (names.length === 0)
    return fail(
      problem('missing', `${folder} holds no PNG or TIFF pictures; give another folder.`, {
        file: folder,
      }),
    )
  return openImageSequence(await Promise.all(names.map((name) => pictureFile(join(folder, name)))))
}

/** Whether two names differ in their number only: pictures of one sequence. */
const isSameSequence = (a: string, b: string): boolean => {
  const [one, other] = [numberedName(a), numberedName(b)]
  return (
    one.number !== undefined &&
    other.number !== undefined &&
    one.before === other.before &&
    one.after === other.after
  )
}

/**
 * A reel by its path: a folder of numbered pictures, one of them (the whole sequence it belongs to
 * is meant), or a video, which is read through ffmpeg.
 */
export const openMediaNode = async (given: string): Promise<Result<FrameSource>> => {
  const path = resolve(given)
  const found = await stat(path).catch(() => undefined)
  if (!found)
    return fail(problem('cannot-read', `${given} is not there; check the name.`, { file: given }))
  if (found.isDirectory()) return openFolder(path, () => true)
  if (found.size === 0) return fail(emptyFile(given))
  const kind = sniffContainer(await beginningOf(path))
  if (kind !== 'PNG' && kind !== 'TIFF') return openFfmpegSource(path, found.size)
  const name = basename(path)
  return numberedName(name).number === undefined
    ? openImageSequence([await pictureFile(path)])
    : openFolder(dirname(path), (other) => isSameSequence(name, other))
}
