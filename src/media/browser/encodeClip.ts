import type { PassPlan } from '../../core/transfer/passPlan.ts'
import { beginVideoRun } from './beginVideoRun.ts'
import { chooseEncoding } from './chooseEncoding.ts'
import { joinVideo } from './joinVideo.ts'

/** The first of these that this browser encodes is taken: H.264 plays everywhere. */
const FORMATS = [
  { format: 'h264', type: 'video/mp4' },
  { format: 'vp9', type: 'video/webm' },
] as const

/** What is written piece by piece, wherever each piece goes. */
const memoryFile = () => {
  let bytes = new Uint8Array(1 << 20)
  let length = 0
  return {
    write: async ({ data, position }: { data: Uint8Array; position: number }): Promise<void> => {
      const end = position + data.length
      if (end > bytes.length) {
        const more = new Uint8Array(Math.max(end, 2 * bytes.length))
        more.set(bytes)
        bytes = more
      }
      bytes.set(data, position)
      length = Math.max(length, end)
    },
    bytes: (): Uint8Array => bytes.slice(0, length),
  }
}

/** A small video of these pictures as this browser encodes it; undefined where it encodes none. */
export const encodeClip = async (
  plan: PassPlan,
  pictures: AsyncGenerator<Uint8Array<ArrayBuffer>>,
): Promise<{ readonly type: string; readonly bytes: Uint8Array } | undefined> => {
  for (const { format, type } of FORMATS) {
    const wanted: PassPlan = { ...plan, settings: { ...plan.settings, format } }
    const encoding = await chooseEncoding(wanted, true)
    if (!encoding.ok) continue
    const run = beginVideoRun(wanted, encoding.value)
    try {
      let at = 0
      for await (const picture of pictures) await run.add(picture, at++)
      const coded = await run.finish()
      const file = memoryFile()
      await joinVideo({
        ...{ plan: wanted, runs: [async () => coded], scan: [], write: file.write },
        onRun: () => {},
        signal: new AbortController().signal,
      })
      return { type, bytes: file.bytes() }
    } catch (error) {
      run.abandon()
      throw error
    }
  }
  return undefined
}
