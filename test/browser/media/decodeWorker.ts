import { frame } from '../../../src/core/time/frame.ts'
import { openVideoFile } from '../../../src/media/browser/openVideoFile.ts'
import { numberIn } from '../../media-layer/support/numberedClips.ts'

/** Opens the file it is sent and answers with the numbers of all its frames, and of a few again. */
self.onmessage = async ({ data }: MessageEvent<File>) => {
  const opened = await openVideoFile(data)
  if (!opened.ok) {
    self.postMessage({ refused: opened.problems[0].says })
    return
  }
  const { facts, read, readRange, close } = opened.value
  const inTurn: number[] = []
  for await (const { planes } of readRange(frame(0), frame(facts.frames)))
    inTurn.push(numberIn(planes))
  const jumping: number[] = []
  for (const n of [40, 3, 59, 0]) jumping.push(numberIn(await read(frame(n))))
  close()
  self.postMessage({ facts, inTurn, jumping })
}
