import type { PassOutput } from '../../core/transfer/passRecord.ts'
import { filesChecksum } from '../../media/filesChecksum.ts'
import type { CarriedSound } from '../../media/videoTools.ts'
import type { PassOrder } from '../passCalls.ts'
import { outputName, type ReadyPass } from './beginPass.ts'
import { finishedFile } from './finishedFiles.ts'
import { finishVideo } from './finishVideo.ts'
import { sha256OfFile } from './folderFiles.ts'
import { checksumOfFiles, clearLeftOver, filesOfFolder, writeChecksums } from './passFolder.ts'
import type { DoneSegment, PassStore } from './passStore.ts'

export type FinishWork = {
  readonly order: PassOrder
  readonly ready: ReadyPass
  readonly store: PassStore
  readonly root: FileSystemDirectoryHandle
  readonly segments: readonly DoneSegment[]
  readonly onSegment: (done: number) => void
  readonly signal: AbortSignal
}

/** What was written, once it is whole. */
export type FinishedFiles = {
  readonly output: PassOutput
  readonly files: readonly File[]
  readonly sound: CarriedSound
  /** Taken from the bytes as they are then. */
  readonly checksumAgain: () => Promise<string>
}

const NO_SOUND = { isCarried: false, says: 'A sequence of pictures carries no sound.' }

const finishFolder = async (
  { order, segments, signal }: FinishWork,
  folder: FileSystemDirectoryHandle,
): Promise<FinishedFiles> => {
  const written = segments.flatMap(({ files }) => files)
  await clearLeftOver(folder, written)
  await writeChecksums(folder, written)
  const files = await filesOfFolder(folder, written)
  return {
    output: {
      ...{ name: folder.name, files: written.length, frames: order.plan.timeline.frames },
      bytes: written.reduce((total, { bytes }) => total + bytes, 0),
      sha256: filesChecksum(written),
    },
    files,
    sound: NO_SOUND,
    checksumAgain: () => checksumOfFiles(files, signal),
  }
}

const finishFile = async (work: FinishWork, to: FileSystemFileHandle): Promise<FinishedFiles> => {
  const { order, ready, store, segments, onSegment, signal } = work
  if (!ready.video) throw new Error('Bug: a video is no sequence')
  const video = ready.video.tools
  const joined = { order, video, store, segments: segments.length, to, onSegment, signal }
  const sound = await finishVideo(joined)
  const file = await to.getFile()
  const sha256 = await sha256OfFile(file, signal)
  const { frames } = order.plan.timeline
  return {
    output: { name: outputName(order), files: 1, frames, bytes: file.size, sha256 },
    files: [file],
    sound,
    checksumAgain: async () => sha256OfFile(await to.getFile(), signal),
  }
}

/** Makes one thing of the segments of a pass: a list of checksums beside pictures, or one video. */
export const finishPass = async (work: FinishWork): Promise<FinishedFiles> => {
  const { order, root } = work
  const { target, key, fileName } = order
  if (target.kind === 'folder') return finishFolder(work, target.folder)
  return finishFile(work, target.file ?? (await finishedFile(root, key, fileName)))
}
