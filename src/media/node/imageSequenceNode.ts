import { readdir, readFile, stat } from 'node:fs/promises'
import { basename, dirname, join, resolve } from 'node:path'
import { problem } from '../../core/base/problem.ts'
import { fail, type Result } from '../../core/base/result.ts'
import type { FrameSource } from '../frameSource.ts'
import { openImageSequence, type PictureFile } from '../imageSequence.ts'
import { type NumberedName, numberedName, sequenceParts } from '../numberedFiles.ts'

/** How the names of the pictures of a sequence end. */
export const PICTURE = /\.(dpx|png|tiff?)$/iu

const pictureFile = async (path: string): Promise<PictureFile> => ({
  name: basename(path),
  bytes: (await stat(path)).size,
  load: async () => new Uint8Array(await readFile(path)),
})

/** Pictures by their paths, in any order: the numbers in their names put them in order. */
export const openPicturesNode = async (paths: readonly string[]): Promise<Result<FrameSource>> => {
  const files: PictureFile[] = []
  for (const path of paths) {
    const file = await pictureFile(resolve(path)).catch(() => undefined)
    if (!file)
      return fail(problem('cannot-read', `${path} is not there; check the name.`, { file: path }))
    files.push(file)
  }
  return openImageSequence(files)
}

const openFolder = async (
  folder: string,
  isWanted: (name: string) => boolean,
): Promise<Result<FrameSource>> => {
  const names = await readdir(folder).catch(() => undefined)
  if (!names) return fail(problem('cannot-read', `${folder} cannot be read.`, { file: folder }))
  const pictures = names.filter(isWanted)
  if (pictures.length === 0)
    return fail(
      problem('missing', `${folder} holds no DPX, PNG or TIFF pictures; give another folder.`, {
        file: folder,
      }),
    )
  return openPicturesNode(pictures.map((name) => join(folder, name)))
}

/** All DPX, PNG and TIFF pictures of a folder, which must be one sequence. Hidden files are left out. */
export const openPictureFolder = (folder: string): Promise<Result<FrameSource>> =>
  openFolder(folder, (name) => PICTURE.test(name) && !name.startsWith('.'))

/** The numbered pictures of a folder that have these words before and after their numbers. */
const openNumbered = (
  folder: string,
  { before, after }: Pick<NumberedName, 'before' | 'after'>,
): Promise<Result<FrameSource>> =>
  openFolder(folder, (name) => {
    const other = numberedName(name)
    return other.number !== undefined && other.before === before && other.after === after
  })

/** The whole sequence a picture belongs to: names beside it that differ in their number only. */
export const openSequenceOf = (path: string): Promise<Result<FrameSource>> => {
  const name = numberedName(basename(path))
  return name.number === undefined ? openPicturesNode([path]) : openNumbered(dirname(path), name)
}

/** A sequence by the name it has in a job, such as `reel_####.dpx`; undefined of other names. */
export const openNamedSequence = (path: string): Promise<Result<FrameSource>> | undefined => {
  const parts = sequenceParts(basename(path))
  return parts && openNumbered(dirname(path), parts)
}
