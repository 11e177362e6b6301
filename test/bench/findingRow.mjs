import { median } from './median.mjs'
import { workerAnswer } from './pageAnswer.mjs'

const PORT = 8797
const WORKER = '/test/bench/findingWorker.ts'
const CLIP = '/.cache/bench/clip.mp4'

/** Finding shots in a 1080p H.264 clip in the browser, against decoding alone. */
export const findingRow = async (browser, root) => {
  const rounds = await workerAnswer(browser, root, PORT, WORKER, CLIP)
  const ratio = median(rounds.map(({ decoding, finding }) => finding / decoding))
  return {
    row: 'finding shots, 1080p H.264 in the browser',
    reference: `decoding alone, ${median(rounds.map(({ decoding }) => decoding)).toFixed(0)} frames/s`,
    result: `${ratio.toFixed(2)} of its rate`,
    goal: '≥ 0.85',
    isMet: ratio >= 0.85,
  }
}
