import { randomUUID } from 'node:crypto'
import { constants } from 'node:fs'
import {
  copyFile,
  link,
  lstat,
  mkdir,
  open,
  readdir,
  readFile,
  rename,
  rm,
  writeFile,
} from 'node:fs/promises'
import { join } from 'node:path'
import { problem } from '../../core/base/problem.ts'
import { fail, ok, type Result } from '../../core/base/result.ts'
import {
  type PartManifest,
  readPartManifest,
  writePartManifest,
} from '../../core/transfer/partManifest.ts'
import { sha256OfFile } from '../../media/node/sha256OfFile.ts'

const MANIFEST = 'part.json'

const padded = (number: number): string => String(number).padStart(4, '0')

/** Name of the folder of a part: `NAME.part-0003-of-0008`. */
export const partName = (name: string, part: number, of: number): string =>
  `${name}.part-${padded(part)}-of-${padded(of)}`

/** A folder that a part is being made in; nothing takes it for a part. */
export const beginPart = async (folder: string): Promise<string> => {
  const unfinished = `${folder}.unfinished-${randomUUID().slice(0, 8)}`
  await mkdir(unfinished, { recursive: true })
  return unfinished
}

/** The manifest of a part that is whole by its name; its files may still be damaged. */
export const readPart = async (folder: string): Promise<Result<PartManifest>> => {
  const found = await lstat(folder).catch(() => undefined)
  if (!found?.isDirectory())
    return fail(
      problem('cannot-read', `${folder} is not the folder of a part; name one.`, { file: folder }),
    )
  const text = await readFile(join(folder, MANIFEST), 'utf8').catch(() => undefined)
  if (text === undefined)
    return fail(
      problem(
        'missing',
        `${folder} has no ${MANIFEST}: the part was not finished; make it again.`,
        {
          file: folder,
        },
      ),
    )
  const manifest = readPartManifest(text)
  return manifest.ok ? manifest : fail({ ...manifest.problems[0], at: { file: folder } })
}

/** The first file of a part that is not as its manifest has it; undefined where all are. */
export const damagedFile = async (
  folder: string,
  { files, sound }: PartManifest,
  onBytes: (bytes: number) => void = () => {},
): Promise<string | undefined> => {
  for (const { name, bytes, sha256 } of [...files, ...(sound ? [sound] : [])]) {
    const path = join(folder, name)
    const found = await lstat(path).catch(() => undefined)
    if (!found?.isFile() || found.size !== bytes) return name
    if ((await sha256OfFile(path).catch(() => '')) !== sha256) return name
    onBytes(bytes)
  }
  return undefined
}

/** Whether the part is there already, whole; refuses where its name is another pass's part. */
export const isPartThere = async (folder: string, identity: string): Promise<Result<boolean>> => {
  const there = await readPart(folder)
  if (!there.ok) return ok(false)
  if (there.value.identity === identity)
    return ok((await damagedFile(folder, there.value)) === undefined)
  return fail(
    problem(
      'conflict',
      `${folder} is a part of another pass; take it away, or write somewhere else.`,
      { file: folder },
    ),
  )
}

/**
 * Makes what lies in `unfinished` the part `folder`, all at once. A whole part that is there
 * already with the same identity stays, and the new one is thrown away: made twice is made once.
 */
export const finishPart = async (
  unfinished: string,
  folder: string,
  manifest: PartManifest,
): Promise<Result<string>> => {
  await writeFile(join(unfinished, MANIFEST), writePartManifest(manifest), { flush: true })
  const give = async (): Promise<boolean> =>
    rename(unfinished, folder).then(
      () => true,
      () => false,
    )
  if (await give()) return ok(folder)
  const there = await isPartThere(folder, manifest.identity)
  if (!there.ok || there.value) {
    await rm(unfinished, { recursive: true, force: true })
    return there.ok ? ok(folder) : there
  }
  await rm(folder, { recursive: true, force: true })
  return (await give())
    ? ok(folder)
    : fail(problem('cannot-read', `${folder} cannot be made; check who may write there.`))
}

/** Takes away what parts were being made under a folder's name when they were stopped. */
export const clearUnfinished = async (parent: string, name: string): Promise<void> => {
  for (const each of await readdir(parent))
    if (each.startsWith(`${name}.unfinished-`))
      await rm(join(parent, each), { recursive: true, force: true })
}

/** How a file of a part gets to its place where it cannot be there as the same file (hard link). */
export type Placing = 'link or move' | 'link or copy'

/** Puts a file of a part in its place, and sees it on the disk. */
export const placeFile = async (from: string, to: string, by: Placing): Promise<void> => {
  try {
    await link(from, to)
  } catch {
    if (by !== 'link or move' || !(await moved(from, to)))
      await copyFile(from, to, constants.COPYFILE_EXCL)
  }
  await toDisk(to)
}

const moved = (from: string, to: string): Promise<boolean> =>
  rename(from, to).then(
    () => true,
    () => false,
  )

/** Waits until a file or folder is on the disk. */
export const toDisk = async (path: string): Promise<void> => {
  const file = await open(path)
  try {
    await file.sync()
  } finally {
    await file.close()
  }
}

/** Gives a finished file its name where nothing has that name yet; false where something has. */
export const nameFile = async (from: string, to: string): Promise<boolean> => {
  try {
    await link(from, to)
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? error.code : ''
    if (code === 'EEXIST') return false
    // A disk without links: the look beforehand must do.
    await rename(from, to)
    return true
  }
  await rm(from)
  return true
}
