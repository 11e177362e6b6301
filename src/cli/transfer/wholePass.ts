import { mkdir, readdir, rm, stat } from 'node:fs/promises'
import { join } from 'node:path'
import { problem } from '../../core/base/problem.ts'
import { fail, ok, type Result } from '../../core/base/result.ts'
import { partFrames } from '../../core/transfer/partFrames.ts'
import type { Pace } from '../../work/pace.ts'
import { createPaceKeeper } from '../../work/pace.ts'
import { diskWords } from '../diskWords.ts'
import { alreadyThere, type Joined, joinParts } from './joinParts.ts'
import { damagedFile, partName, readPart } from './partFolder.ts'
import { makePartsOnThreads } from './partThreads.ts'
import { takePassLock } from './passLock.ts'
import type { TransferNames, TransferTask } from './transferTask.ts'

/** How a whole pass is made. */
export type WholePassWish = {
  readonly out: string
  readonly workers: number
  readonly resumes: boolean
  readonly onPace: (words: string, pace: Pace) => void
  readonly note: (words: string) => void
}

/** Frames of a part at most: what is lost where a pass is stopped. */
const MOST_PART_FRAMES = 250

/** A short pass is cut too, so that all threads have work, but not finer than is worth beginning. */
const FEWEST_PARTS = 8
const LEAST_PART_FRAMES = 25

/** Parts of a pass: by its frames alone, so that it goes on with any number of threads. */
const partsFor = (frames: number): number =>
  Math.max(
    1,
    Math.ceil(frames / MOST_PART_FRAMES),
    Math.min(FEWEST_PARTS, Math.floor(frames / LEAST_PART_FRAMES)),
  )

/** Where parts are joined before they get their name. */
const JOINED = 'joined'

const folderOf = (out: string): string => `${out}.unfinished`

const isThere = (path: string): Promise<boolean> =>
  stat(path).then(
    () => true,
    () => false,
  )

/** Which parts are whole in a work folder; others there, damaged or not finished, are taken away. */
const wholeThere = async (
  folder: string,
  task: TransferTask,
  of: number,
): Promise<Result<ReadonlySet<number>>> => {
  const whole = new Set<number>()
  for (const name of await readdir(folder)) {
    const path = join(folder, name)
    if (name === JOINED) await rm(path, { recursive: true, force: true })
    if (!/\.part-\d/u.test(name)) continue
    const manifest = await readPart(path)
    if (manifest.ok && manifest.value.identity !== task.identity)
      return fail(
        problem(
          'conflict',
          `${folder} holds parts of another pass: the job, its scan or the way of transfer has changed since. Take the folder away to begin anew.`,
          { file: folder },
        ),
      )
    // One stopped just before it got its name is not taken: the name tells that it is whole.
    const isWhole =
      manifest.ok &&
      name === partName(task.stem, manifest.value.part, of) &&
      manifest.value.of === of &&
      (await damagedFile(path, manifest.value)) === undefined
    if (isWhole) whole.add(manifest.value.part)
    else await rm(path, { recursive: true, force: true })
  }
  return ok(whole)
}

const begin = async ({ out, resumes }: WholePassWish): Promise<Result<string>> => {
  const folder = folderOf(out)
  if (await isThere(out)) return alreadyThere(out)
  if (!resumes && (await isThere(folder)))
    return fail(
      problem(
        'conflict',
        `A pass to ${out} was begun and not finished: go on with it by --resume, or take ${folder} away.`,
        { file: folder },
      ),
    )
  try {
    await mkdir(folder, { recursive: true })
    return ok(folder)
  } catch (error) {
    const says = diskWords(error) ?? String(error)
    return fail(problem('cannot-read', `${folder} cannot be made: ${says}.`, { file: folder }))
  }
}

/** The parts of a pass that are not there yet are made in `folder`, and all joined. */
const joinedPass = async (
  names: TransferNames,
  task: TransferTask,
  { out, workers, onPace, note }: WholePassWish,
  folder: string,
): Promise<Result<Joined>> => {
  const { frames } = task.plan.timeline
  const { settings, reel } = task.plan
  const length = { settings: settings.format, frames, rate: reel.rate }
  const of = partsFor(frames)
  const whole = await wholeThere(folder, task, of)
  if (!whole.ok) return whole
  const parts = Array.from({ length: of }, (_, i) => i + 1)
  const left = parts.filter((part) => !whole.value.has(part))
  const lengthOf = (part: number): number => {
    const { first, end } = partFrames(length, part, of)
    return end - first
  }
  const framesLeft = left.reduce((sum, part) => sum + lengthOf(part), 0)
  if (framesLeft < frames) note(`${frames - framesLeft} of ${frames} frames were there already.`)
  const pathOf = (part: number): string => join(folder, partName(task.stem, part, of))
  const pace = createPaceKeeper(framesLeft, () => performance.now())
  let done = 0
  const orders = left.map((part) => ({ part, of, folder: pathOf(part) }))
  const made = await makePartsOnThreads(names, orders, workers, (more) => {
    done += more
    onPace('Writing', pace(done))
  })
  if (!made.ok) return made
  const joining = createPaceKeeper(1000, () => performance.now())
  return joinParts(parts.map(pathOf), {
    ...{ out, by: 'link or move', unfinished: join(folder, JOINED) },
    // Those that were there were looked at above; the read-back takes the checksums of all again.
    isChecked: true,
    onBytes: (bytes, total) => onPace('Joining', joining(Math.round((1000 * bytes) / total))),
  })
}

/**
 * Makes a whole pass: its parts in a folder beside `out`, then joined to `out`, which is there
 * whole or not at all. The folder goes when all is done.
 */
export const wholePass = async (
  names: TransferNames,
  task: TransferTask,
  wish: WholePassWish,
): Promise<Result<Joined>> => {
  const begun = await begin(wish)
  if (!begun.ok) return begun
  const lock = await takePassLock(begun.value)
  if (!lock.ok) return lock
  // One that ended between the first look and the lock.
  if (await isThere(wish.out)) {
    await rm(begun.value, { recursive: true, force: true })
    return alreadyThere(wish.out)
  }
  const joined = await joinedPass(names, task, wish, begun.value).catch(async (error: unknown) => {
    await lock.value()
    throw error
  })
  // The lock goes with the folder: taken away alone it could be another's by then.
  if (joined.ok) await rm(begun.value, { recursive: true, force: true })
  else await lock.value()
  return joined
}
