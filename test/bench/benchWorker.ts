import { frame } from '../../src/core/time/frame.ts'
import { openVideoFile } from '../../src/media/browser/openVideoFile.ts'
import { findShots } from '../../src/work/findShots.ts'

/** One round: the same reel decoded only, then searched for shots; frames per second of each. */
const round = async (file: File): Promise<{ decoding: number; finding: number }> => {
  const opened = await openVideoFile(file)
  if (!opened.ok) throw new Error(opened.problems[0].says)
  const source = opened.value
  const { frames } = source.facts
  const timed = async (work: () => Promise<unknown>): Promise<number> => {
    const begun = performance.now()
    await work()
    return frames / ((performance.now() - begun) / 1000)
  }
  const decoding = await timed(async () => {
    for await (const read of source.readRange(frame(0), frame(frames))) void read.planes
  })
  const finding = await timed(() => findShots(source, () => undefined))
  source.close()
  return { decoding, finding }
}

self.addEventListener('message', async ({ data }: MessageEvent<string>) => {
  try {
    const response = await fetch(data)
    const file = new File([await response.blob()], 'clip.mp4')
    await round(file)
    const rounds = []
    for (let i = 0; i < 5; i++) rounds.push(await round(file))
    self.postMessage(rounds)
  } catch (error) {
    self.postMessage(String(error))
  }
})
