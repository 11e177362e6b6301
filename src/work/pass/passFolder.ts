import { problem } from '../../core/base/problem.ts'
import { fail, ok, type Result } from '../../core/base/result.ts'
import { frameFileName } from '../../core/transfer/frameFileName.ts'
import type { PartFile } from '../../core/transfer/partManifest.ts'
import type { PassPlan } from '../../core/transfer/passPlan.ts'
import { filesChecksum } from '../../media/filesChecksum.ts'
import { fileIn, namesIn, sha256OfFile, writeWhole } from './folderFiles.ts'

/** The list of a folder's files as checksum tools read it. */
export const CHECKSUMS = 'checksums.txt'

/** A folder is taken only where nothing in it bears the names of what is to be written. */
export const checkFolder = async (
  folder: FileSystemDirectoryHandle,
  stem: string,
  { settings }: PassPlan,
): Promise<Result<undefined>> => {
  const first = frameFileName(stem, 0, settings.format)
  const before = first.slice(0, first.lastIndexOf('_') + 1)
  const after = first.slice(first.lastIndexOf('.'))
  for await (const name of namesIn(folder))
    if (name === CHECKSUMS || (name.startsWith(before) && name.endsWith(after)))
      return fail(
        problem(
          'conflict',
          `The folder ${folder.name} holds ${name} already; choose an empty folder.`,
          { file: name },
        ),
      )
  return ok(undefined)
}

/** What Chromium calls a file that is being written, until it takes the place of the one meant. */
const BEING_WRITTEN = '.crswap'

/** Takes away what a worker that died left of these files where it was writing them. */
export const clearLeftOver = async (
  folder: FileSystemDirectoryHandle,
  files: readonly PartFile[],
): Promise<void> => {
  const ours = new Set(files.map(({ name }) => `${name}${BEING_WRITTEN}`))
  const left: string[] = []
  for await (const name of namesIn(folder)) if (ours.has(name)) left.push(name)
  for (const name of left) await folder.removeEntry(name)
}

/** Writes `checksums.txt` in the `sha256sum` form, names in order. */
export const writeChecksums = (
  folder: FileSystemDirectoryHandle,
  files: readonly PartFile[],
): Promise<void> =>
  writeWhole(folder, CHECKSUMS, files.map(({ name, sha256 }) => `${sha256}  ${name}\n`).join(''))

/** The files of a finished sequence; one that is not there is left out. */
export const filesOfFolder = async (
  folder: FileSystemDirectoryHandle,
  names: readonly { readonly name: string }[],
): Promise<readonly File[]> => {
  const found: File[] = []
  for (const { name } of names) {
    const file = await fileIn(folder, name)
    if (file) found.push(file)
  }
  return found
}

/** One checksum of the files of a sequence, taken from their bytes. */
export const checksumOfFiles = async (
  files: readonly File[],
  signal: AbortSignal,
): Promise<string> => {
  const sums: { name: string; sha256: string }[] = []
  for (const file of files) {
    signal.throwIfAborted()
    sums.push({ name: file.name, sha256: await sha256OfFile(file, signal) })
  }
  return filesChecksum(sums)
}
