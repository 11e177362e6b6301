import { problem } from '../../core/base/problem.ts'
import { fail, ok, type Result } from '../../core/base/result.ts'
import { frameFileName } from '../../core/transfer/frameFileName.ts'
import type { PartFile } from '../../core/transfer/partManifest.ts'
import type { PassPlan } from '../../core/transfer/passPlan.ts'
import { filesChecksum } from '../../media/filesChecksum.ts'
import { sha256OfBlob } from '../../media/sha256.ts'
import { fileIn, namesIn, writeWhole } from './folderFiles.ts'

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
  for (const file of files)
    sums.push({ name: file.name, sha256: await sha256OfBlob(file, undefined, signal) })
  return filesChecksum(sums)
}
