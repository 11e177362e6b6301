import type { StillFormat } from '../../core/formats/stillFormats.ts'
import { formatTimecode } from '../../core/time/timecode.ts'
import { frameFileName } from '../../core/transfer/frameFileName.ts'
import type { PartFile } from '../../core/transfer/partManifest.ts'
import type { PassPlan } from '../../core/transfer/passPlan.ts'
import { encodeDelivered } from '../../media/encodeDelivered.ts'
import { sha256Here, writeWhole } from './folderFiles.ts'
import type { SegmentWriter } from './segmentWriter.ts'

/** Files on their way to the folder while the next picture is made. */
const MOST_ON_THE_WAY = 4

/** Writes the pictures of a segment into a folder, each whole or not at all. */
export const writePictures = (
  { reel, coding, timeline }: PassPlan,
  format: StillFormat,
  stem: string,
  folder: FileSystemDirectoryHandle,
): SegmentWriter => {
  const size = { width: reel.media.width, height: reel.media.height }
  const files: PartFile[] = []
  const onTheWay = new Set<Promise<void>>()
  let failure: { readonly error: unknown } | undefined
  const write = async (bytes: Uint8Array<ArrayBuffer>, at: number): Promise<void> => {
    const name = frameFileName(stem, at, format)
    const count = reel.startCount - timeline.headFrames + at
    const words = {
      name,
      signal: coding.matrix,
      rate: reel.rate,
      timecode: formatTimecode(count, reel.rate, reel.isDropFrame),
      pixelAspect: coding.pixelAspect ?? 1,
    }
    const encoded = await encodeDelivered(bytes, size, words, format)
    const sha256 = await sha256Here(encoded)
    await writeWhole(folder, name, encoded)
    files.push({ name, bytes: encoded.length, sha256 })
  }
  const settle = async (): Promise<void> => {
    await Promise.all(onTheWay)
    if (failure) throw failure.error
  }
  return {
    add: async (bytes, at) => {
      const writing: Promise<void> = write(bytes, at).then(
        () => void onTheWay.delete(writing),
        (error) => {
          failure ??= { error }
          onTheWay.delete(writing)
        },
      )
      onTheWay.add(writing)
      if (onTheWay.size >= MOST_ON_THE_WAY) await Promise.race(onTheWay)
      if (failure) throw failure.error
    },
    finish: async () => {
      await settle()
      return { files: files.toSorted((a, b) => (a.name < b.name ? -1 : 1)) }
    },
    abandon: () => Promise.all(onTheWay).then(() => undefined),
  }
}
