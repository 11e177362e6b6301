/** A job file as parsed JSON, of whatever version. */
export type AnyJobFile = { readonly version: number } & Readonly<Record<string, unknown>>

/** How a file of version `to` − 1 becomes one of version `to`, and back. */
export type Migration = {
  readonly to: number
  readonly up: (file: AnyJobFile) => AnyJobFile
  readonly down: (file: AnyJobFile) => AnyJobFile
}

/** The version this program writes. */
export const JOB_VERSION = 1

/** Consecutive from version 2 on; version 1 is the first, so there is none yet. */
export const MIGRATIONS: readonly Migration[] = []

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
