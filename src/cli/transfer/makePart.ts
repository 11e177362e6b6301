import { createHash } from 'node:crypto'
import { rm, stat, writeFile } from 'node:fs/promises'
import { basename, join } from 'node:path'
import { problem } from '../../core/base/problem.ts'
import { fail, type Result } from '../../core/base/result.ts'
import { PROGRAM_VERSION } from '../../core/programVersion.ts'
import { formatTimecode } from '../../core/time/timecode.ts'
import type { DeliveredForm } from '../../core/transfer/deliveredForm.ts'
import { formOf } from '../../core/transfer/formOf.ts'
import { frameFileName } from '../../core/transfer/frameFileName.ts'
import type { OutputRange } from '../../core/transfer/outputTimeline.ts'
import { type FileFrames, filesOfFrames, partFrames } from '../../core/transfer/partFrames.ts'
import type { PartFile, PartManifest } from '../../core/transfer/partManifest.ts'
import type { PassPlan } from '../../core/transfer/passPlan.ts'
import { isSequence } from '../../core/transfer/transferSettings.ts'
import { videoTags } from '../../core/transfer/videoTags.ts'
import type { Kernel } from '../../kernel/kernel.ts'
import { roomForDpxWords } from '../../media/dpx/encodeDpx.ts'
import { encodeDelivered } from '../../media/encodeDelivered.ts'
import type { FrameSource } from '../../media/frameSource.ts'
import { deflateNode } from '../../media/node/deflateNode.ts'
import { sha256OfFile } from '../../media/node/sha256OfFile.ts'
import { takeSound } from '../../media/node/takeSound.ts'
import { beginVideoSegment, type FoundEncoder, findEncoder } from '../../media/node/videoSegment.ts'
import { type DeliveredFrame, deliverFrames } from '../../work/deliverFrames.ts'
import { headPicturesOf } from '../../work/headPictures.ts'
import { diskWords } from '../diskWords.ts'
import { beginPart, finishPart } from './partFolder.ts'
import type { TransferTask } from './transferTask.ts'

/** What makes parts: opened once, used for one part after another. */
export type PartTools = { readonly source: FrameSource; readonly kernel: Kernel }

/** Timecode count of the first written frame: the head lies before the reel. */
const startCountOf = ({ reel, timeline }: PassPlan): number => reel.startCount - timeline.headFrames

/** Files on their way to the disk while the next frame is made. */
const MOST_ON_THE_WAY = 4

type Counted = Pick<PartManifest, 'held' | 'limitedPixels' | 'limitedFrames' | 'clippedPixels'>

/** The frames of a range, counted as they pass. */
const countingFrames = (
  { plan }: TransferTask,
  { source, kernel }: PartTools,
  form: DeliveredForm,
  range: OutputRange,
  onFrame: () => void,
  room: (() => Uint8Array<ArrayBuffer>) | undefined,
) => {
  const held: { frame: number; says: string }[] = []
  const counted = { limitedPixels: 0, limitedFrames: 0, clippedPixels: 0 }
  const work = { plan, source, kernel, form, ...headPicturesOf(plan), ...(room && { room }) }
  async function* frames(): AsyncGenerator<DeliveredFrame> {
    for await (const each of deliverFrames(work, range)) {
      if (each.damage && each.reelFrame !== undefined)
        held.push({ frame: each.reelFrame, says: each.damage.says })
      counted.limitedPixels += each.limited
      counted.limitedFrames += each.limited > 0 ? 1 : 0
      counted.clippedPixels += each.clipped
      yield each
      onFrame()
    }
  }
  return { frames, counted: (): Counted => ({ held, ...counted }) }
}

/** Memory of pictures that goes round: taking it anew for each costs as much as filling it. */
const dpxRooms = ({ reel }: PassPlan) => {
  const free: Uint8Array<ArrayBuffer>[] = []
  return {
    take: () => free.pop() ?? roomForDpxWords(reel.media.width, reel.media.height),
    give: (room: Uint8Array<ArrayBuffer>): void => void free.push(room),
  }
}

const writeSequence = async (
  task: TransferTask,
  frames: AsyncGenerator<DeliveredFrame>,
  folder: string,
  onWritten: (room: Uint8Array<ArrayBuffer>) => void,
): Promise<readonly PartFile[]> => {
  const { plan, stem } = task
  const { format } = plan.settings
  if (format !== 'dpx' && format !== 'tiff' && format !== 'png')
    throw new Error('Bug: a video is no sequence')
  const { reel, coding } = plan
  const size = { width: reel.media.width, height: reel.media.height }
  const files: PartFile[] = []
  const onTheWay = new Set<Promise<void>>()
  let failure: unknown
  for await (const { at, bytes } of frames) {
    const name = frameFileName(stem, at, format)
    const count = startCountOf(plan) + at
    const words = {
      name,
      signal: coding.matrix,
      rate: reel.rate,
      timecode: formatTimecode(count, reel.rate, reel.isDropFrame),
      pixelAspect: coding.pixelAspect ?? 1,
    }
    const encoded = await encodeDelivered(bytes, size, words, format, deflateNode)
    const writing: Promise<void> = writeFile(join(folder, name), encoded).then(
      () => {
        onTheWay.delete(writing)
        onWritten(bytes)
      },
      (error) => {
        failure ??= error
        onTheWay.delete(writing)
      },
    )
    onTheWay.add(writing)
    const sha256 = createHash('sha256').update(encoded).digest('hex')
    files.push({ name, bytes: encoded.length, sha256 })
    if (onTheWay.size >= MOST_ON_THE_WAY) await Promise.race(onTheWay)
    if (failure !== undefined) throw failure
  }
  await Promise.all(onTheWay)
  if (failure !== undefined) throw failure
  return files
}

const writeVideo = async (
  task: TransferTask,
  { name: encoder }: FoundEncoder,
  frames: AsyncGenerator<DeliveredFrame>,
  pieces: readonly FileFrames[],
  folder: string,
): Promise<readonly PartFile[]> => {
  const files: PartFile[] = []
  for (const { name, first, end } of pieces) {
    const path = join(folder, name)
    const segment = beginVideoSegment(task.plan, encoder, path)
    try {
      for (let at = first; at < end; at++) {
        const next = await frames.next()
        if (next.done) throw new Error(`Bug: no frame ${at}`)
        await segment.write(next.value.bytes)
      }
      await segment.finish()
    } catch (error) {
      segment.abandon()
      throw error
    }
    files.push({ name, bytes: (await stat(path)).size, sha256: await sha256OfFile(path) })
  }
  await frames.next()
  return files
}

const soundOf = async (
  { plan, mediaPath, stem }: TransferTask,
  folder: string,
): Promise<Pick<PartManifest, 'sound' | 'noSound'>> => {
  const { format, carriesSound } = plan.settings
  if (!carriesSound) return { sound: null, noSound: 'No sound was asked for.' }
  const name = `${stem}-sound.nut`
  const path = join(folder, name)
  const taken = await takeSound(mediaPath, format, path)
  if (taken.none !== undefined) {
    await rm(path, { force: true })
    return { sound: null, noSound: taken.none }
  }
  const { codec, startsAt } = taken
  const bytes = (await stat(path)).size
  return { sound: { name, bytes, sha256: await sha256OfFile(path), startsAt, codec }, noSound: '' }
}

const diskProblem = (error: unknown, folder: string): Result<never> | undefined => {
  const why = diskWords(error)
  return why === undefined
    ? undefined
    : fail(
        problem('cannot-read', `${basename(folder)} could not be written: ${why}.`, {
          file: folder,
        }),
      )
}

/**
 * Makes part `part` of `of` as the folder `folder`: whole, or not there at all. It depends on
 * nothing but the job and the scan.
 */
export const makePart = async (
  task: TransferTask,
  tools: PartTools,
  { part, of, folder }: { readonly part: number; readonly of: number; readonly folder: string },
  onFrame: () => void,
): Promise<Result<string>> => {
  const { plan } = task
  const { format } = plan.settings
  const { frames, headFrames } = plan.timeline
  const { reel } = plan
  const timecode = formatTimecode(startCountOf(plan), reel.rate, reel.isDropFrame)
  const length = { settings: format, frames, rate: reel.rate }
  const range = partFrames(length, part, of)
  const form = formOf(plan)
  const unfinished = await beginPart(folder).catch((error: unknown) => ({ error }))
  if (typeof unfinished !== 'string') {
    const told = diskProblem(unfinished.error, folder)
    if (told) return told
    throw unfinished.error
  }
  try {
    const rooms = format === 'dpx' ? dpxRooms(plan) : undefined
    const counting = countingFrames(task, tools, form, range, onFrame, rooms?.take)
    const encoder = isSequence(format) ? undefined : await findEncoder(plan)
    const pieces = filesOfFrames(length, task.stem, range)
    const files = encoder
      ? await writeVideo(task, encoder, counting.frames(), pieces, unfinished)
      : await writeSequence(task, counting.frames(), unfinished, rooms?.give ?? (() => {}))
    const sound =
      part === 1
        ? await soundOf(task, unfinished)
        : { sound: null, noSound: 'It goes with the first part.' }
    return await finishPart(unfinished, folder, {
      ...{ format: 'reelwright-part', version: 1, identity: task.identity, settings: format },
      ...{ program: PROGRAM_VERSION, encoder: encoder?.title ?? '' },
      tags: encoder ? videoTags(plan) : null,
      ...{ stem: task.stem, part, of, ...range, frames, files, ...sound, ...counting.counted() },
      ...{ headFrames, rate: reel.rate, timecode },
    })
  } catch (error) {
    await rm(unfinished, { recursive: true, force: true }).catch(() => {})
    const told = diskProblem(error, folder)
    if (told) return told
    throw error
  }
}
