import { sha256OfBlob } from '../../media/sha256OfBlob.ts'

/** The names in a folder; the library of types leaves out what every browser with folders has. */
export const namesIn = (folder: FileSystemDirectoryHandle): AsyncIterable<string> =>
  (folder as unknown as { keys: () => AsyncIterable<string> }).keys()

/** A file of a folder; undefined where there is none of this name. */
export const fileIn = async (
  folder: FileSystemDirectoryHandle,
  name: string,
): Promise<File | undefined> => {
  try {
    return await (await folder.getFileHandle(name)).getFile()
  } catch (error) {
    if (error instanceof DOMException && error.name === 'NotFoundError') return undefined
    throw error
  }
}

/** Writes a file whole: until it is closed, what was there before stays. */
export const writeWhole = async (
  folder: FileSystemDirectoryHandle,
  name: string,
  content: Blob | Uint8Array<ArrayBuffer> | string,
): Promise<void> => {
  const stream = await (await folder.getFileHandle(name, { create: true })).createWritable()
  try {
    await stream.write(content)
  } catch (error) {
    await stream.abort().catch(() => {})
    throw error
  }
  await stream.close()
}

/** SHA-256 of bytes that are in memory, by the browser's own code. */
export const sha256Here = async (bytes: Uint8Array<ArrayBuffer>): Promise<string> => {
  const digest = new Uint8Array(await crypto.subtle.digest('SHA-256', bytes))
  return Array.from(digest, (byte) => byte.toString(16).padStart(2, '0')).join('')
}

/** Files up to this size are taken into memory for their checksum; the browser's own code is quick. */
const LARGEST_AT_ONCE = 128 * 2 ** 20

/** SHA-256 of a file of any size. */
export const sha256OfFile = async (file: File, signal: AbortSignal): Promise<string> =>
  file.size <= LARGEST_AT_ONCE
    ? sha256Here(new Uint8Array(await file.arrayBuffer()))
    : sha256OfBlob(file, undefined, signal)
