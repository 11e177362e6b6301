import { createSha256 } from '../../../src/core/base/sha256.ts'
import { frame } from '../../../src/core/time/frame.ts'
import { openMedia } from '../../../src/media/browser/openMedia.ts'
import type { FrameSource } from '../../../src/media/frameSource.ts'

export const openHere = async (files: readonly File[]): Promise<FrameSource> => {
  const opened = await openMedia(files)
  if (!opened.ok) throw new Error(opened.problems[0].says)
  return opened.value
}

/** A checksum of each decoded frame of a file. */
export const decodedFrames = async (files: readonly File[]): Promise<readonly string[]> => {
  const source = await openHere(files)
  const sums: string[] = []
  for await (const { planes } of source.readRange(frame(0), frame(source.facts.frames))) {
    const hash = createSha256()
    for (const each of planes.samples)
      hash.add(new Uint8Array(each.buffer, each.byteOffset, each.byteLength))
    sums.push(hash.digest())
  }
  source.close()
  return sums
}
