import type { PartFile } from '../../core/transfer/partManifest.ts'
import { fileIn, sha256Here } from './folderFiles.ts'
import type { DoneSegment, PassStore } from './passStore.ts'

const isWhole = async (
  { name, bytes, sha256 }: PartFile,
  find: (name: string) => Promise<File | undefined>,
): Promise<boolean> => {
  const file = await find(name)
  return (
    file?.size === bytes && (await sha256Here(new Uint8Array(await file.arrayBuffer()))) === sha256
  )
}

/** Segments that are there with all their files as they were written, by checksum. */
export const wholeSegments = async (
  store: PassStore,
  folder: FileSystemDirectoryHandle | undefined,
  onSegment: (done: DoneSegment) => void,
  signal: AbortSignal,
): Promise<ReadonlyMap<number, DoneSegment>> => {
  const find = folder ? (name: string) => fileIn(folder, name) : store.video
  const whole = new Map<number, DoneSegment>()
  for (const index of await store.segments()) {
    signal.throwIfAborted()
    const done = await store.segment(index)
    if (!done) continue
    let areWhole = done.files.length > 0
    for (const file of done.files) areWhole &&= await isWhole(file, find)
    if (!areWhole) continue
    whole.set(index, done)
    onSegment(done)
  }
  return whole
}
