import { sha256OfText } from '../core/base/sha256.ts'

/** A file's name and its SHA-256. */
export type FileChecksum = { readonly name: string; readonly sha256: string }

/**
 * One checksum of the files of a sequence: the SHA-256 of lines `<checksum>  <name>`, ordered by
 * name, each ending in LF, as checksum tools list them.
 */
export const filesChecksum = (files: readonly FileChecksum[]): string =>
  sha256OfText(
    files
      .toSorted((a, b) => (a.name < b.name ? -1 : 1))
      .map(({ name, sha256 }) => `${sha256}  ${name}\n`)
      .join(''),
  )
