import { readdir, stat } from 'node:fs/promises'
import { basename, dirname, join } from 'node:path'
import { numberedName, sequenceParts } from '../numberedFiles.ts'
import { PICTURE } from './imageSequenceNode.ts'

/** Which names in a folder belong to the sequence a name stands for; undefined of a single file. */
const isOfSequence = (name: string): ((other: string) => boolean) | undefined => {
  const { before, after, number } = numberedName(name)
  const parts = sequenceParts(name)
  if (!parts && (number === undefined || !PICTURE.test(name))) return undefined
  const wanted = parts ?? { before, after }
  return (each) => {
    const other = numberedName(each)
    return (
      other.number !== undefined && other.before === wanted.before && other.after === wanted.after
    )
  }
}

/**
 * The files that a scan given by this path is: the file itself, or all pictures of the folder or
 * of the sequence, as `openMediaNode` reads them.
 */
export const scanPaths = async (path: string): Promise<readonly string[]> => {
  const isFolder = await stat(path).then(
    (found) => found.isDirectory(),
    () => false,
  )
  const isWanted = isFolder
    ? (name: string) => PICTURE.test(name) && !name.startsWith('.')
    : isOfSequence(basename(path))
  if (!isWanted) return [path]
  const folder = isFolder ? path : dirname(path)
  return (await readdir(folder)).filter(isWanted).map((each) => join(folder, each))
}
