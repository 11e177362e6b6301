import { mkdir, rename, stat, writeFile } from 'node:fs/promises'
import { basename, dirname, join } from 'node:path'
import { problem } from '../core/base/problem.ts'
import { fail, ok, type Result } from '../core/base/result.ts'
import type { TextFile } from '../core/formats/handOverFiles.ts'

const isFolder = async (path: string): Promise<boolean> =>
  (await stat(path).catch(() => undefined))?.isDirectory() ?? false

const cannotWrite = (path: string, error: unknown): Result<never> => {
  const isNoFolder = error instanceof Error && 'code' in error && error.code === 'ENOENT'
  const why = isNoFolder ? 'its folder is not there; make it first' : String(error)
  return fail(problem('cannot-read', `${path} cannot be written: ${why}.`, { file: path }))
}

/** A whole file or none: what was there before stays until what is new is on the disk. */
export const writeWhole = async (
  path: string,
  content: string | Uint8Array,
): Promise<Result<string>> => {
  const beside = `${path}.part`
  try {
    await writeFile(beside, content)
    await rename(beside, path)
    return ok(path)
  } catch (error) {
    return cannotWrite(path, error)
  }
}

/** `list.edl` → `list-2.edl`, for the further files of a list that was split. */
const numbered = (name: string, index: number): string =>
  /\.[^.]+$/u.test(name) ? name.replace(/(\.[^.]+)$/u, `-${index}$1`) : `${name}-${index}`

/**
 * Writes files to `out`: a folder takes them under their own names, and so does a folder that is
 * made where `wantsFolder`; else the first is `out` itself and others are numbered beside it.
 * Returns the paths written.
 */
export const writeFiles = async (
  files: readonly TextFile[],
  out: string,
  wantsFolder: boolean,
): Promise<Result<readonly string[]>> => {
  const hasFolder = (await isFolder(out)) || (wantsFolder && files.length > 1)
  try {
    if (hasFolder) await mkdir(out, { recursive: true })
  } catch (error) {
    return cannotWrite(out, error)
  }
  const written: string[] = []
  for (const [index, { name, text }] of files.entries()) {
    const beside = index === 0 ? basename(out) : numbered(basename(out), index + 1)
    const made = await writeWhole(hasFolder ? join(out, name) : join(dirname(out), beside), text)
    if (!made.ok) return made
    written.push(made.value)
  }
  return ok(written)
}
