import { unpackCodedVideo } from '../../media/codedVideo.ts'
import { MediaError } from '../../media/mediaError.ts'
import type { CarriedSound, VideoTools, WrittenChunk } from '../../media/videoTools.ts'
import type { PassOrder } from '../passCalls.ts'
import { type PassStore, segmentVideoName } from './passStore.ts'
import { storageProblem } from './storageProblem.ts'

export type FinishVideo = {
  readonly order: PassOrder
  readonly video: VideoTools
  readonly store: PassStore
  readonly segments: number
  readonly to: FileSystemFileHandle
  readonly onSegment: (done: number) => void
  readonly signal: AbortSignal
}

/** Joins the coded segments of a pass to one file, which is there whole or as it was before. */
export const finishVideo = async (work: FinishVideo): Promise<CarriedSound> => {
  const { order, video, store, segments, to, onSegment, signal } = work
  const read = async (index: number) => {
    const file = await store.video(segmentVideoName(index))
    if (!file) throw new Error(`Bug: segment ${index} is not there`)
    return unpackCodedVideo(new Uint8Array(await file.arrayBuffer()))
  }
  const stream = await to.createWritable()
  let refused: unknown
  const write = (chunk: WrittenChunk): Promise<void> =>
    stream.write(chunk).catch((error) => {
      refused ??= error
      throw error
    })
  try {
    const sound = await video.join({
      ...{ plan: order.plan, scan: order.scan, write, onRun: onSegment, signal },
      runs: Array.from({ length: segments }, (_, index) => () => read(index)),
    })
    await stream.close()
    return sound
  } catch (error) {
    await stream.abort().catch(() => {})
    const told = storageProblem(refused ?? error, to.name)
    throw told ? new MediaError(told) : error
  }
}
