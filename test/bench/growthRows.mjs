import { execFileSync } from 'node:child_process'
import { buildForNode } from './buildForNode.mjs'
import { median } from './median.mjs'

/** Blocks of a hundred frames: the first and the last thousand frames. */
const BLOCKS = 10
const MOST_TIME = 1.2
/** Milliseconds a cue: a hundredth of what measuring the shortest of cues takes at 1080p. */
const MOST_MORE = 1
const MOST_MEMORY = 1.1

const megabytes = (bytes) => (bytes / 2 ** 20).toFixed(0)

/** What a frame costs as a job has more cues and a reel more frames: in Node, small pictures. */
export const growthRows = async (root, folder) => {
  const file = await buildForNode(root, folder, 'growthBench')
  // A small nursery: what is resident is to be what is needed, not what is yet to be collected.
  const measured = execFileSync(
    process.execPath,
    ['--expose-gc', '--max-semi-space-size=2', file, root],
    { encoding: 'utf8', maxBuffer: 2 ** 24 },
  )
  const { cues, frames, app } = JSON.parse(measured)
  const check = median(cues.checkMany) / median(cues.checkFew)
  const show = median(cues.showMany) / median(cues.showFew)
  const [many, few] = [Math.min(...app.many), Math.min(...app.few)]
  // The least disturbed block of each: unlike the jobs above, these cannot take turns.
  const first = Math.min(...frames.blocks.slice(0, BLOCKS))
  const last = Math.min(...frames.blocks.slice(-BLOCKS))
  const [early, late] = [frames.memory.at(0), frames.memory.at(-1)]
  const memory = Math.max(...Object.keys(early).map((name) => late[name] / early[name]))
  const compare = (name) => `${megabytes(late[name])} against ${megabytes(early[name])}`
  return [
    {
      row: 'a frame of a job of 10,000 cues',
      reference: 'the same frame in a job of 10',
      result: `measured ${check.toFixed(2)} × (${median(cues.checkMany).toFixed(0)} against ${median(cues.checkFew).toFixed(0)} µs of 32×18), shown ${show.toFixed(2)} ×`,
      goal: `at most ${MOST_TIME} ×`,
      isMet: check <= MOST_TIME && show <= MOST_TIME,
    },
    {
      row: 'what the page itself does for a cue measured, in a job of 10,000',
      reference: 'the same in a job of 1,010',
      result: `${many.toFixed(2)} against ${few.toFixed(2)} ms`,
      goal: `at most ${MOST_MORE} ms more`,
      isMet: many - few <= MOST_MORE,
    },
    {
      row: 'the last 1,000 of 100,000 frames of a cue, colours counted',
      reference: 'the first 1,000',
      result: `${(last / first).toFixed(2)} × (${last.toFixed(0)} against ${first.toFixed(0)} µs of 32×18)`,
      goal: `at most ${MOST_TIME} ×`,
      isMet: last / first <= MOST_TIME,
    },
    {
      row: 'memory after 100,000 frames',
      reference: 'after 1,000',
      result: `${memory.toFixed(2)} × (MiB: ${compare('rss')} resident, ${compare('used')} in use, ${compare('kernel')} the kernel's)`,
      goal: `at most ${MOST_MEMORY} ×`,
      isMet: memory <= MOST_MEMORY,
    },
  ]
}
