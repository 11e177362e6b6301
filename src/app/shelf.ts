import { type DBSchema, type IDBPDatabase, openDB } from 'idb'
import type { CueId } from '../core/job/recordIds.ts'
import type { ShelvedJob } from '../ui/services.ts'

/** What the browser's storage keeps of a job: its file text, and where its reel came from. */
export type ShelfEntry = {
  readonly key: string
  readonly title: string
  readonly cues: number
  readonly at: number
  readonly text: string
  readonly isSample: boolean
}

type ShelfSchema = DBSchema & {
  jobs: { key: string; value: ShelfEntry; indexes: { at: number } }
  /** Copies of the smaller scans, so that a job comes back with its pictures. */
  scans: { key: string; value: readonly File[] }
  /** Cues of a job that were looked at on this computer. */
  looked: { key: string; value: readonly CueId[] }
}

/** The jobs kept in this browser. */
export type Shelf = {
  readonly put: (entry: ShelfEntry) => Promise<void>
  readonly get: (key: string) => Promise<ShelfEntry | undefined>
  readonly list: () => Promise<readonly ShelvedJob[]>
  readonly putScan: (key: string, files: readonly File[]) => Promise<void>
  readonly getScan: (key: string) => Promise<readonly File[] | undefined>
  readonly putLooked: (key: string, ids: readonly CueId[]) => Promise<void>
  readonly getLooked: (key: string) => Promise<readonly CueId[]>
}

/** Scans up to this size are copied into the browser's storage with their job. */
const LARGEST_SCAN = 256 * 2 ** 20

const open = (): Promise<IDBPDatabase<ShelfSchema>> =>
  openDB<ShelfSchema>('reelwright', 2, {
    upgrade: (db, from) => {
      if (from < 1) {
        db.createObjectStore('jobs', { keyPath: 'key' }).createIndex('at', 'at')
        db.createObjectStore('scans')
      }
      if (from < 2) db.createObjectStore('looked')
    },
  })

export const openShelf = (): Shelf => {
  const database = open()
  return {
    put: async (entry) => {
      const transaction = (await database).transaction('jobs', 'readwrite', {
        durability: 'strict',
      })
      await Promise.all([transaction.store.put(entry), transaction.done])
    },
    get: async (key) => (await database).get('jobs', key),
    list: async () => {
      const entries = await (await database).getAllFromIndex('jobs', 'at')
      return entries.reverse().map(({ key, title, cues, at }) => ({ key, title, cues, at }))
    },
    putScan: async (key, files) => {
      const bytes = files.reduce((sum, file) => sum + file.size, 0)
      if (bytes <= LARGEST_SCAN) await (await database).put('scans', files, key)
    },
    getScan: async (key) => (await database).get('scans', key),
    putLooked: async (key, ids) => {
      await (await database).put('looked', ids, key)
    },
    getLooked: async (key) => (await (await database).get('looked', key)) ?? [],
  }
}
