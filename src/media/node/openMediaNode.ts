import { open, stat } from 'node:fs/promises'
import { basename, resolve } from 'node:path'
import { type Problem, problem } from '../../core/base/problem.ts'
import { fail, type Result } from '../../core/base/result.ts'
import { findDamage } from '../findDamage.ts'
import type { FrameSource } from '../frameSource.ts'
import type { ReadAt } from '../readAt.ts'
import { emptyFile, unknownFile, unreadPicture } from '../refusals.ts'
import { isPictureKind, SNIFFED_BYTES, sniffContainer } from '../sniffContainer.ts'
import { openFfmpegSource } from './ffmpegSource.ts'
import { openNamedSequence, openPictureFolder, openSequenceOf } from './imageSequenceNode.ts'

type Look = { readonly container: string | undefined; readonly damage: Problem | undefined }

/** What a file is by its bytes, and what is wrong with it by the sizes written in it. */
const lookInto = async (path: string, size: number): Promise<Look> => {
  const file = await open(path)
  try {
    const readAt: ReadAt = async (offset, length) => {
      const { buffer, bytesRead } = await file.read(new Uint8Array(length), 0, length, offset)
      return buffer.subarray(0, bytesRead)
    }
    const container = sniffContainer(await readAt(0, SNIFFED_BYTES))
    const damage = container && (await findDamage(basename(path), container, size, readAt))
    return { container, damage: damage || undefined }
  } finally {
    await file.close()
  }
}

/**
 * A reel by its path: a folder of numbered DPX, PNG or TIFF pictures, one of them (where its name
 * ends in a number, the whole sequence it belongs to is meant), the name of a sequence with `####`
 * for the numbers, or a video, which is read through ffmpeg. What a file is, its bytes tell, not its name.
 */
export const openMediaNode = async (given: string): Promise<Result<FrameSource>> => {
  const path = resolve(given)
  const found = await stat(path).catch(() => undefined)
  if (!found)
    return (
      (await openNamedSequence(path)) ??
      fail(problem('cannot-read', `${given} is not there; check the name.`, { file: given }))
    )
  if (found.isDirectory()) return openPictureFolder(path)
  if (!found.isFile())
    return fail(problem('cannot-read', `${given} is not a file; give one.`, { file: given }))
  if (found.size === 0) return fail(emptyFile(given))
  const look = await lookInto(path, found.size).catch(() => undefined)
  if (!look)
    return fail(
      problem('cannot-read', `${given} cannot be read; check who may read it.`, { file: given }),
    )
  const { container, damage } = look
  const name = basename(path)
  if (container === undefined) return fail(unknownFile(name))
  if (container === 'PNG' || container === 'TIFF' || container === 'DPX')
    return openSequenceOf(path)
  if (isPictureKind(container)) return fail(unreadPicture(name, container))
  if (damage) return fail(damage)
  return openFfmpegSource({ path, container, bytes: found.size })
}
