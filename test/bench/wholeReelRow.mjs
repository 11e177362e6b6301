import { cpus } from 'node:os'
import { median } from './median.mjs'
import { workerAnswer } from './pageAnswer.mjs'

const PORT = 8798
const WORKER = '/test/bench/wholeReelWorker.ts'
const CLIP = '/.cache/bench/clip.mp4'

/** Measuring a whole 1080p H.264 reel in the browser, against decoding alone. */
export const wholeReelRow = async (browser, root) => {
  const { rounds, frames, cues } = await workerAnswer(browser, root, PORT, WORKER, CLIP)
  const rateOf = (work) => median(rounds.map(({ decoding, [work]: time }) => decoding / time))
  const [checking, counting] = [rateOf('checking'), rateOf('counting')]
  const decoding = (frames * 1000) / median(rounds.map((round) => round.decoding))
  return {
    row: `measuring a whole reel of ${cues} cues, 1080p H.264 in the browser`,
    reference: `decoding alone, ${decoding.toFixed(0)} frames/s on ${cpus().length} cores`,
    result: `${checking.toFixed(2)} of its rate; counting all colours too ${counting.toFixed(2)}`,
    goal: '≥ 0.8',
    isMet: checking >= 0.8,
  }
}
