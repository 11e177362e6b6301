import { mkdir, rename, rm, stat, writeFile } from 'node:fs/promises'
import { basename, extname, join } from 'node:path'
import { type Problem, problem } from '../../core/base/problem.ts'
import { fail, ok, type Result } from '../../core/base/result.ts'
import { framesPerSecond } from '../../core/time/rate.ts'
import { type FoundPart, joinOrder } from '../../core/transfer/joinOrder.ts'
import { filesOfFrames } from '../../core/transfer/partFrames.ts'
import { isSequence, TRANSFER_FORMAT_FACTS } from '../../core/transfer/transferSettings.ts'
import { joinVideo } from '../../media/node/joinVideo.ts'
import { diskWords } from '../diskWords.ts'
import { damagedFile, nameFile, type Placing, placeFile, readPart, toDisk } from './partFolder.ts'

/** What parts are joined to, and how. */
export type JoinWish = {
  readonly out: string
  readonly by: Placing
  /** Whether files were held against their checksums already. */
  readonly isChecked: boolean
  /** What is joined lies here until it is whole, on the same disk as `out`. */
  readonly unfinished: string
  /** Told how many bytes of the parts were checked, of all. */
  readonly onBytes: (done: number, total: number) => void
}

export type Joined = {
  readonly parts: readonly FoundPart[]
  /** Copies of parts that were passed over, and why. */
  readonly passedOver: readonly Problem[]
}

const isThere = (path: string): Promise<boolean> =>
  stat(path).then(
    () => true,
    () => false,
  )

/** The parts of folders whose every file is as it was made; what is not is told. */
const wholeParts = async (folders: readonly string[], { isChecked, onBytes }: JoinWish) => {
  const found: FoundPart[] = []
  const passedOver: Problem[] = []
  for (const place of folders) {
    const manifest = await readPart(place)
    if (manifest.ok) found.push({ place, manifest: manifest.value })
    else passedOver.push(...manifest.problems)
  }
  if (isChecked) return { whole: found, passedOver }
  const total = found
    .flatMap(({ manifest }) => manifest.files)
    .reduce((sum, { bytes }) => sum + bytes, 0)
  let done = 0
  const whole: FoundPart[] = []
  for (const each of found) {
    const damaged = await damagedFile(each.place, each.manifest, (bytes) => {
      done += bytes
      onBytes(done, total)
    })
    if (damaged === undefined) whole.push(each)
    else
      passedOver.push(
        problem(
          'malformed',
          `${each.place}: ${damaged} is damaged or not there; the part is passed over.`,
          { file: join(each.place, damaged) },
        ),
      )
  }
  return { whole, passedOver }
}

const joinSequence = async (
  parts: readonly FoundPart[],
  unfinished: string,
  by: Placing,
): Promise<void> => {
  const lines: string[] = []
  for (const { place, manifest } of parts)
    for (const { name, sha256 } of manifest.files) {
      await placeFile(join(place, name), join(unfinished, name), by)
      lines.push(`${sha256}  ${name}\n`)
    }
  await writeFile(join(unfinished, 'checksums.txt'), lines.join(''), { flush: true })
  await toDisk(unfinished)
}

const joinPieces = (
  parts: readonly [FoundPart, ...FoundPart[]],
  unfinished: string,
  name: string,
): Promise<Result<string>> => {
  const [{ place, manifest }] = parts
  const { rate, timecode, sound, headFrames, tags } = manifest
  return joinVideo(
    {
      pieces: parts.flatMap((each) =>
        filesOfFrames(each.manifest, each.manifest.stem, each.manifest).map((file) => ({
          path: join(each.place, file.name),
          frames: file.end - file.first,
        })),
      ),
      rate,
      timecode,
      tags,
      container: extname(name) === '.mp4' ? 'mp4' : 'webm',
      sound: sound
        ? {
            path: join(place, sound.name),
            startsAt: sound.startsAt + headFrames / framesPerSecond(rate),
          }
        : undefined,
    },
    unfinished,
    join(unfinished, name),
  )
}

export const alreadyThere = (out: string): Result<never> =>
  fail(
    problem('conflict', `${out} is already there; take it away, or write somewhere else.`, {
      file: out,
    }),
  )

/**
 * Joins the parts in these folders to `out`, which is there whole or not at all: a folder of
 * numbered pictures with `checksums.txt`, or a video. Every file of every part is checked against
 * its checksum first, where that was not done. Refuses what is missing, of another pass, or already there.
 */
export const joinParts = async (
  folders: readonly string[],
  wish: JoinWish,
): Promise<Result<Joined>> => {
  const { out, by, unfinished } = wish
  if (await isThere(out)) return alreadyThere(out)
  const { whole, passedOver } = await wholeParts(folders, wish)
  const ordered = joinOrder(whole)
  if (!ordered.ok) return fail(ordered.problems[0], ...ordered.problems.slice(1), ...passedOver)
  const parts = ordered.value
  const format = parts[0].manifest.settings
  const { extension, title } = TRANSFER_FORMAT_FACTS[format]
  if (!isSequence(format) && extname(out) !== `.${extension}`)
    return fail(
      problem('wrong-use', `These are parts of ${title}: --out is to end in .${extension}.`),
    )
  await rm(unfinished, { recursive: true, force: true })
  try {
    await mkdir(unfinished, { recursive: true })
    if (isSequence(format)) {
      await joinSequence(parts, unfinished, by)
      await rename(unfinished, out)
    } else {
      const joined = await joinPieces(parts, unfinished, basename(out))
      if (!joined.ok) return joined
      await toDisk(joined.value)
      if (!(await nameFile(joined.value, out))) return alreadyThere(out)
    }
    return ok({ parts, passedOver })
  } catch (error) {
    const says = diskWords(error) ?? String(error)
    return fail(problem('cannot-read', `${out} could not be made: ${says}.`, { file: out }))
  } finally {
    await rm(unfinished, { recursive: true, force: true })
  }
}
