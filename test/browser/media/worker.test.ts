import { expect, test } from 'vitest'
import { fetchClip } from './fetchClip.ts'

const inWorker = (file: File): Promise<unknown> =>
  new Promise((resolve, reject) => {
    const worker = new Worker(new URL('./decodeWorker.ts', import.meta.url), { type: 'module' })
    worker.onmessage = ({ data }) => {
      worker.terminate()
      resolve(data)
    }
    worker.onerror = ({ message }) => reject(new Error(message))
    worker.postMessage(file)
  })

test.each(['h264-bframes-24.mp4', 'h264-422-10bit-25.mov', 'vp9-10bit-25.webm', 'av1-24.mp4'])(
  'a web worker decodes %s as exactly as the page does',
  async (path) => {
    expect(await inWorker(await fetchClip(`numbered/${path}`))).toMatchObject({
      facts: { name: path, frames: 60 },
      inTurn: Array.from({ length: 60 }, (_, n) => n),
      jumping: [40, 3, 59, 0],
    })
  },
)
