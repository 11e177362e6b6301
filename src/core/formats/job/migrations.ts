import { PRINT_BASE } from '../../film/filmBase.ts'
import { EBU_R103_V3 } from '../../tolerance/profile.ts'

/** A job file as parsed JSON, of whatever version. */
export type AnyJobFile = { readonly version: number } & Readonly<Record<string, unknown>>

/** How a file of version `to` − 1 becomes one of version `to`, and back. */
export type Migration = {
  readonly to: number
  readonly up: (file: AnyJobFile) => AnyJobFile
  readonly down: (file: AnyJobFile) => AnyJobFile
}

/** The version this program writes. */
export const JOB_VERSION = 2

type AnyRecord = Readonly<Record<string, unknown>>

/** The same file with `change` done to each of its reels, where it has reels. */
const withReels = (file: AnyJobFile, change: (reel: AnyRecord) => unknown): AnyJobFile =>
  Array.isArray(file.reels) ? { ...file, reels: file.reels.map(change) } : file

/** The same file with `change` done to what holds for the whole job, where it has that. */
const withInfo = (file: AnyJobFile, change: (info: AnyRecord) => unknown): AnyJobFile =>
  typeof file.info === 'object' && file.info !== null
    ? { ...file, info: change(file.info as AnyRecord) }
    : file

/** Consecutive from version 2 on. */
export const MIGRATIONS: readonly Migration[] = [
  {
    // Version 2 says how a reel's scan becomes video (before, every scan was a print), and holds
    // house profiles of tolerance (before, there was EBU R 103 v3 alone).
    to: 2,
    up: (file) =>
      withInfo(
        withReels(file, (reel) => ({ ...reel, base: PRINT_BASE })),
        (info) => ({ ...info, profiles: [] }),
      ),
    down: (file) =>
      withInfo(
        withReels(file, ({ base: _, ...reel }) => reel),
        ({ profiles: _, ...info }) => ({ ...info, tolerance: EBU_R103_V3.id }),
      ),
  },
]

/** A file brought to the version this program writes, step by step. */
export const migrateUp = (
  file: AnyJobFile,
  migrations: readonly Migration[] = MIGRATIONS,
): AnyJobFile =>
  migrations.reduce(
    (current, { to, up }) =>
      current.version === to - 1 ? { ...up(current), version: to } : current,
    file,
  )

/** A file taken back to an earlier version, for a program that knows no later one. */
export const migrateDown = (
  file: AnyJobFile,
  version: number,
  migrations: readonly Migration[] = MIGRATIONS,
): AnyJobFile =>
  migrations
    .toReversed()
    .reduce(
      (current, { to, down }) =>
        current.version === to && to > version ? { ...down(current), version: to - 1 } : current,
      file,
    )
