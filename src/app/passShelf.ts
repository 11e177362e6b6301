import { type DBSchema, openDB } from 'idb'

type PassSchema = DBSchema & {
  /** Folders and files that unfinished passes write to. */
  targets: { key: string; value: FileSystemHandle }
}

/** Where unfinished passes write to, kept between sessions. */
export type PassShelf = {
  readonly put: (key: string, target: FileSystemHandle) => Promise<void>
  readonly get: (key: string) => Promise<FileSystemHandle | undefined>
  readonly remove: (key: string) => Promise<void>
}

export const openPassShelf = (): PassShelf => {
  const database = openDB<PassSchema>('reelwright-passes', 1, {
    upgrade: (db) => {
      db.createObjectStore('targets')
    },
  })
  return {
    put: async (key, target) => {
      await (await database).put('targets', target, key)
    },
    get: async (key) => (await database).get('targets', key),
    remove: async (key) => (await database).delete('targets', key),
  }
}
