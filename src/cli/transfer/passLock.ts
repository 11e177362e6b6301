import { randomUUID } from 'node:crypto'
import { link, readFile, rename, rm, writeFile } from 'node:fs/promises'
import { hostname } from 'node:os'
import { join } from 'node:path'
import { problem } from '../../core/base/problem.ts'
import { fail, ok, type Result } from '../../core/base/result.ts'

const NAME = 'lock.json'

/** Which process works here: its number alone may be another's after a restart. */
type Holder = { readonly pid: number; readonly host: string; readonly started: string }

/** When a process of this machine began, by the system's own count; '' where that is not told. */
const startOf = async (pid: number): Promise<string> => {
  const text = await readFile(`/proc/${pid}/stat`, 'utf8').catch(() => '')
  // The fields after the name, which may hold anything but ends in the last bracket.
  return text.slice(text.lastIndexOf(')') + 2).split(' ')[19] ?? ''
}

const isAlive = async ({ pid, host, started }: Holder): Promise<boolean> => {
  if (host !== hostname()) return true
  try {
    process.kill(pid, 0)
  } catch (error) {
    if (error instanceof Error && 'code' in error && error.code === 'ESRCH') return false
  }
  const begun = await startOf(pid)
  return begun === '' || started === '' || begun === started
}

const readHolder = async (path: string): Promise<Holder | undefined> => {
  try {
    const { pid, host, started } = JSON.parse(await readFile(path, 'utf8')) as Partial<Holder>
    return typeof pid === 'number' && typeof host === 'string' && typeof started === 'string'
      ? { pid, host, started }
      : undefined
  } catch {
    return undefined
  }
}

const codeOf = (error: unknown): unknown =>
  error instanceof Error && 'code' in error ? error.code : undefined

/** Puts a lock in its place with all that it says, or not at all; false where one is there. */
const putLock = async (path: string, mine: Holder): Promise<boolean> => {
  const draft = `${path}.${randomUUID().slice(0, 8)}`
  await writeFile(draft, JSON.stringify(mine))
  try {
    await link(draft, path)
    return true
  } catch (error) {
    if (codeOf(error) === 'EEXIST') return false
    // A disk without links.
    return await writeFile(path, JSON.stringify(mine), { flag: 'wx' }).then(
      () => true,
      (failure) => {
        if (codeOf(failure) === 'EEXIST') return false
        throw failure
      },
    )
  } finally {
    await rm(draft, { force: true })
  }
}

/** Takes a dead process's lock away, unless another has just done so and put its own there. */
const clearLock = async (path: string, dead: Holder | undefined): Promise<void> => {
  const aside = `${path}.${randomUUID().slice(0, 8)}`
  await rename(path, aside).catch(() => undefined)
  const taken = await readHolder(aside)
  if (JSON.stringify(taken) !== JSON.stringify(dead)) await link(aside, path).catch(() => {})
  await rm(aside, { force: true })
}

/**
 * Takes the one lock of a work folder for this process; refuses while another holds it. One left
 * by a process of this machine that is no more is taken over. Returns how to give it back.
 */
export const takePassLock = async (folder: string): Promise<Result<() => Promise<void>>> => {
  const path = join(folder, NAME)
  const mine: Holder = {
    pid: process.pid,
    host: hostname(),
    started: await startOf(process.pid),
  }
  for (let tries = 0; tries < 2; tries++) {
    if (await putLock(path, mine)) return ok(() => rm(path, { force: true }))
    const holder = await readHolder(path)
    if (holder && (await isAlive(holder)))
      return fail(
        problem(
          'conflict',
          `Another pass works on this (process ${holder.pid} on ${holder.host}); wait for it, or stop it first. If it is no more, take ${path} away.`,
          { file: path },
        ),
      )
    await clearLock(path, holder)
  }
  return fail(
    problem('conflict', 'Another pass has just begun on this; look again.', { file: path }),
  )
}
