import type { PartFile } from '../../core/transfer/partManifest.ts'
import type { PassTally } from '../checkWritten.ts'
import { fileIn, namesIn, writeWhole } from './folderFiles.ts'

/** A pass as it was begun. */
export type BegunPass = {
  /** Of all that decides its pictures, and of the scan: see `partIdentityText`. */
  readonly identity: string
  /** How video is encoded, in words; empty of sequences. */
  readonly encoding: string
  /** Name of the file or folder it writes. */
  readonly name: string
  readonly stem: string
  /** UTC by ISO 8601. */
  readonly begunAt: string
  /** Written frames in all. */
  readonly total: number
}

/** A segment that is written: its files with their checksums, and what was counted in it. */
export type DoneSegment = PassTally & {
  readonly first: number
  readonly end: number
  readonly files: readonly PartFile[]
  readonly heldFrames: readonly number[]
}

/** What the browser's own storage keeps of one unfinished pass. */
export type PassStore = {
  readonly begun: () => Promise<BegunPass | undefined>
  readonly begin: (pass: BegunPass) => Promise<void>
  readonly segments: () => Promise<readonly number[]>
  readonly segment: (index: number) => Promise<DoneSegment | undefined>
  /** Coded video of a segment goes first: a segment with its record is whole. */
  readonly putSegment: (index: number, done: DoneSegment, video?: Blob) => Promise<void>
  readonly video: (name: string) => Promise<File | undefined>
  readonly discard: () => Promise<void>
}

const FOLDER = 'transfers'
const BEGUN = 'pass.json'
const SEGMENT = /^segment-(\d+)\.json$/u

const recordName = (index: number): string => `segment-${index}.json`

export const segmentVideoName = (index: number): string => `segment-${index}.video`

const isNotFound = (error: unknown): boolean =>
  error instanceof DOMException && error.name === 'NotFoundError'

/** @param key names the reel; letters and digits */
export const openPassStore = (root: FileSystemDirectoryHandle, key: string): PassStore => {
  const parent = (): Promise<FileSystemDirectoryHandle> =>
    root.getDirectoryHandle(FOLDER, { create: true })
  const folder = async (): Promise<FileSystemDirectoryHandle> =>
    (await parent()).getDirectoryHandle(key, { create: true })
  const read = async <Value>(name: string): Promise<Value | undefined> => {
    const file = await fileIn(await folder(), name)
    if (!file) return undefined
    try {
      return JSON.parse(await file.text()) as Value
    } catch (error) {
      if (error instanceof SyntaxError) return undefined
      throw error
    }
  }
  const write = async (name: string, content: Blob | string): Promise<void> =>
    writeWhole(await folder(), name, content)
  return {
    begun: () => read<BegunPass>(BEGUN),
    begin: (pass) => write(BEGUN, JSON.stringify(pass)),
    segments: async () => {
      const found: number[] = []
      for await (const name of namesIn(await folder())) {
        const index = SEGMENT.exec(name)?.[1]
        if (index !== undefined) found.push(Number(index))
      }
      return found.sort((a, b) => a - b)
    },
    segment: (index) => read<DoneSegment>(recordName(index)),
    putSegment: async (index, done, video) => {
      if (video) await write(segmentVideoName(index), video)
      await write(recordName(index), JSON.stringify(done))
    },
    video: async (name) => fileIn(await folder(), name),
    discard: async () => {
      try {
        await (await parent()).removeEntry(key, { recursive: true })
      } catch (error) {
        if (!isNotFound(error)) throw error
      }
    },
  }
}
