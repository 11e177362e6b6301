import { packCodedVideo } from '../../media/codedVideo.ts'
import type { VideoRun } from '../../media/videoTools.ts'
import { sha256Here } from './folderFiles.ts'
import type { SegmentWriter } from './segmentWriter.ts'

/** Encodes the pictures of a segment, to be kept as `name` until all are joined. */
export const writeVideoRun = (run: VideoRun, name: string): SegmentWriter => ({
  add: run.add,
  finish: async () => {
    const video = packCodedVideo(await run.finish())
    const bytes = new Uint8Array(await video.arrayBuffer())
    return { files: [{ name, bytes: bytes.length, sha256: await sha256Here(bytes) }], video }
  },
  abandon: async () => run.abandon(),
})
