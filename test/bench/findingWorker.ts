import { frame } from '../../src/core/time/frame.ts'
import { openVideoFile } from '../../src/media/browser/openVideoFile.ts'
import { findShots } from '../../src/work/findShots.ts'

/**
 * One round: the same reel decoded only, and searched for shots, in this order or the other;
 * frames per second of each.
 */
const round = async (
  file: File,
  isDecodingFirst: boolean,
): Promise<{ decoding: number; finding: number }> => {
  const opened = await openVideoFile(file)
  if (!opened.ok) throw new Error(opened.problems[0].says)
  const source = opened.value
  const { frames } = source.facts
  const timed = async (work: () => Promise<unknown>): Promise<number> => {
    const begun = performance.now()
    await work()
    return frames / ((performance.now() - begun) / 1000)
  }
  const decode = () =>
    timed(async () => {
      for await (const read of source.readRange(frame(0), frame(frames))) void read.planes
    })
  const find = () => timed(() => findShots(source, () => undefined))
  const first = await (isDecodingFirst ? decode() : find())
  const second = await (isDecodingFirst ? find() : decode())
  source.close()
  return isDecodingFirst
    ? { decoding: first, finding: second }
    : { decoding: second, finding: first }
}

self.addEventListener('message', async ({ data }: MessageEvent<string>) => {
  try {
    const response = await fetch(data)
    const file = new File([await response.blob()], 'clip.mp4')
    await round(file, true)
    const rounds = []
    for (let i = 0; i < 6; i++) rounds.push(await round(file, i % 2 === 0))
    self.postMessage(rounds)
  } catch (error) {
    self.postMessage(String(error))
  }
})
