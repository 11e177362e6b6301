import { strToU8, type Zippable, zipSync } from 'fflate'
import type { TextFile } from '../../core/formats/handOverFiles.ts'

/**
 * The first time a .zip can state. Every file has it, so that the same hand-over is the same bytes:
 * local time, as .zip files have no zone.
 */
const FIXED_TIME = new Date(1980, 0, 1)

/** One .zip of texts as UTF-8, in their order. Two files of one name are a bug. */
export const zipFiles = (files: readonly TextFile[]): Uint8Array => {
  const entries: Zippable = {}
  for (const { name, text } of files) {
    if (name in entries) throw new Error(`Bug: two files are called ${name}`)
    entries[name] = [strToU8(text), { mtime: FIXED_TIME }]
  }
  return zipSync(entries, { level: 6 })
}
