import { execFileSync } from 'node:child_process'
import { once } from 'node:events'
import { cpus } from 'node:os'
import { Worker } from 'node:worker_threads'
import { buildForNode } from './buildForNode.mjs'

const WIDTH = 1920
const HEIGHT = 1080
const PICTURES = 8
/** Pictures measured in a round, however many workers share them. */
const WANTED = 16
const ROUNDS = 24

/** Pictures of the clip in 10-bit R′G′B′. */
const picturesOf = (clip) => {
  const plane = WIDTH * HEIGHT * 2
  const bytes = execFileSync(
    'ffmpeg',
    [
      ...['-v', 'error', '-ss', '2', '-i', clip, '-frames:v', String(PICTURES)],
      ...['-pix_fmt', 'gbrp10le', '-f', 'rawvideo', '-'],
    ],
    { maxBuffer: 3 * plane * PICTURES },
  )
  const { buffer, byteOffset } = bytes
  return Array.from({ length: PICTURES }, (_, i) => {
    const [g, b, r] = [0, 1, 2].map(
      (p) =>
        new Uint16Array(
          buffer.slice(byteOffset + (3 * i + p) * plane, byteOffset + (3 * i + p + 1) * plane),
        ),
    )
    return { width: WIDTH, height: HEIGHT, layout: 'rgb', depth: 10, samples: [r, g, b] }
  })
}

/** The fused pass on pictures shared by two workers, each with its kernel, against one worker. */
export const workersRow = async (root, folder, clip) => {
  const file = await buildForNode(root, folder, 'workersBench')
  const taken = new Int32Array(new SharedArrayBuffer(4))
  const workerData = { root, pictures: picturesOf(clip), taken }
  const workers = [0, 1].map(() => new Worker(file, { workerData }))
  try {
    await Promise.all(workers.map((worker) => once(worker, 'message')))
    /** Milliseconds by the clock until the workers together have measured them all. */
    const timed = async (crew, wanted) => {
      taken[0] = 0
      const answers = crew.map((worker) => once(worker, 'message'))
      const begun = performance.now()
      for (const worker of crew) worker.postMessage(wanted)
      const had = (await Promise.all(answers)).reduce((sum, [count]) => sum + count, 0)
      const time = performance.now() - begun
      if (had !== wanted) throw new Error(`${had} pictures were measured, not ${wanted}`)
      return time
    }
    // For the engine to compile.
    for (const worker of workers) await timed([worker], PICTURES)
    const ones = []
    const twos = []
    for (let i = 0; i < ROUNDS; i++) {
      ones.push(await timed([workers[i % 2]], WANTED))
      twos.push(await timed(workers, WANTED))
    }
    // The least disturbed round of each: the clock counts what else the machine does.
    const [one, two] = [ones, twos].map((rounds) => Math.min(...rounds) / WANTED)
    return {
      row: 'the same on two workers',
      reference: `one worker, by the clock, best of ${ROUNDS} rounds on ${cpus().length} cores`,
      result: `${(one / two).toFixed(2)} × (${two.toFixed(1)} against ${one.toFixed(1)} ms a frame)`,
      goal: 'at least 1.8 ×',
      isMet: one / two >= 1.8,
    }
  } finally {
    await Promise.all(workers.map((worker) => worker.terminate()))
  }
}
