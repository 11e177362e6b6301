import { mkdir, realpath, rename, rm, stat, writeFile } from 'node:fs/promises'
import { basename, dirname, join } from 'node:path'
import { problem } from '../core/base/problem.ts'
import { fail, ok, type Result } from '../core/base/result.ts'
import type { TextFile } from '../core/formats/handOverFiles.ts'
import { diskWords } from './diskWords.ts'

type Content = string | Uint8Array

/** A file that is to be written. */
export type ToWrite = { readonly path: string; readonly content: Content }

const isFolder = async (path: string): Promise<boolean> =>
  (await stat(path).catch(() => undefined))?.isDirectory() ?? false

const cannotWrite = (path: string, error: unknown): Result<never> =>
  fail(
    problem('cannot-read', `${path} cannot be written: ${diskWords(error) ?? String(error)}.`, {
      file: path,
    }),
  )

/** Where a name leads, through links, and the mode of what is there; its own mode where nothing is. */
const targetOf = async (path: string) => {
  const target = await realpath(path).catch(() => path)
  const there = await stat(target).catch(() => undefined)
  return { target, mode: there?.mode, isFile: there === undefined || there.isFile() }
}

/**
 * Files, each whole, and all or none: what was there before stays until all that is new is on the
 * disk. Links are followed, and modes kept; what is no file, as a pipe, is written straight to.
 */
export const writeAll = async (files: readonly ToWrite[]): Promise<Result<readonly string[]>> => {
  const parts: { readonly part: string; readonly target: string }[] = []
  let path = files[0]?.path ?? ''
  try {
    for (const each of files) {
      path = each.path
      if (await isFolder(path)) throw Object.assign(new Error(path), { code: 'EISDIR' })
      const { target, mode, isFile } = await targetOf(path)
      if (!isFile) {
        await writeFile(target, each.content)
        continue
      }
      const part = `${target}.part`
      parts.push({ part, target })
      await writeFile(part, each.content, mode === undefined ? {} : { mode })
    }
    for (const { part, target } of parts) await rename(part, target)
    return ok(files.map((each) => each.path))
  } catch (error) {
    for (const { part } of parts) await rm(part, { force: true })
    return cannotWrite(path, error)
  }
}

/** A whole file or none: what was there before stays until what is new is on the disk. */
export const writeWhole = async (path: string, content: Content): Promise<Result<string>> => {
  const written = await writeAll([{ path, content }])
  return written.ok ? ok(path) : written
}

/** `list.edl` → `list-2.edl`, for the further files of a list that was split. */
const numbered = (name: string, index: number): string =>
  /\.[^.]+$/u.test(name) ? name.replace(/(\.[^.]+)$/u, `-${index}$1`) : `${name}-${index}`

/**
 * Where files go that are written to `out`: a folder takes them under their own names, and so does
 * one that is made where `wantsFolder`; else the first is `out` itself and others are numbered
 * beside it.
 */
const placesFor = async (files: readonly TextFile[], out: string, wantsFolder: boolean) => {
  const hasFolder = (await isFolder(out)) || (wantsFolder && files.length > 1)
  const paths = files.map(({ name }, index) => {
    if (hasFolder) return join(out, name)
    return index === 0 ? out : join(dirname(out), numbered(basename(out), index + 1))
  })
  return { hasFolder, paths }
}

/** Writes files to `out`, all or none, but never over one of `inputs`. Returns the paths written. */
export const writeFiles = async (
  files: readonly TextFile[],
  out: string,
  wantsFolder: boolean,
  inputs: readonly string[],
): Promise<Result<readonly string[]>> => {
  const { hasFolder, paths } = await placesFor(files, out, wantsFolder)
  const free = await notOver(paths, inputs)
  if (!free.ok) return free
  try {
    if (hasFolder) await mkdir(out, { recursive: true })
  } catch (error) {
    return cannotWrite(out, error)
  }
  return writeAll(files.map(({ text }, index) => ({ path: paths[index] ?? out, content: text })))
}

/** Refuses to write over what is read from: a file of `inputs`, or one in a folder of them. */
export const notOver = async (
  paths: readonly string[],
  inputs: readonly string[],
): Promise<Result<undefined>> => {
  const real = (path: string): Promise<string | undefined> => realpath(path).catch(() => undefined)
  const read = new Set(await Promise.all(inputs.map(real)))
  for (const path of paths) {
    const target = await real(path)
    if (target !== undefined && (read.has(target) || read.has(dirname(target))))
      return fail(
        problem('wrong-use', `${path} is read from here; write to another file.`, { file: path }),
      )
  }
  return ok(undefined)
}
