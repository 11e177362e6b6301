import { namesIn } from './folderFiles.ts'

const FOLDER = 'finished'

/** Finished files stay a while, as the browser may still be copying one to where it is kept. */
const KEPT_MS = 60 * 60 * 1000

const folderIn = (root: FileSystemDirectoryHandle): Promise<FileSystemDirectoryHandle> =>
  root.getDirectoryHandle(FOLDER, { create: true })

/** A place in the browser's storage for the finished file of a pass. */
export const finishedFile = async (
  root: FileSystemDirectoryHandle,
  key: string,
  name: string,
): Promise<FileSystemFileHandle> => {
  const folder = await (await folderIn(root)).getDirectoryHandle(key, { create: true })
  return folder.getFileHandle(name, { create: true })
}

/** Takes away finished files that were handed over long ago. */
export const clearFinished = async (root: FileSystemDirectoryHandle): Promise<void> => {
  const parent = await folderIn(root)
  const keys: string[] = []
  for await (const key of namesIn(parent)) keys.push(key)
  for (const key of keys) {
    const folder = await parent.getDirectoryHandle(key)
    let isOld = true
    for await (const name of namesIn(folder)) {
      const file = await (await folder.getFileHandle(name)).getFile()
      if (Date.now() - file.lastModified < KEPT_MS) isOld = false
    }
    if (isOld) await parent.removeEntry(key, { recursive: true })
  }
}
