import { Worker } from 'node:worker_threads'
import { type Problem, problem } from '../../core/base/problem.ts'
import { fail, ok, type Result } from '../../core/base/result.ts'
import type { FromPartThread, PartOrder, ToPartThread } from './partThread.ts'
import type { TransferNames } from './transferTask.ts'

/** How often a part is made anew when the thread that made it died. */
const MOST_TRIES = 2

type Outcome = 'made' | { readonly died: string } | { readonly problems: readonly Problem[] }

/** One thread, given one order after another. */
const partThread = (names: TransferNames, onFrames: (frames: number) => void) => {
  // The thread is this same program, which sees by its data what it is (`isPartThread`).
  const worker = new Worker(new URL(import.meta.url), { workerData: { names } })
  let settle: ((outcome: Outcome) => void) | undefined
  let isReady = false
  let early: Outcome | undefined
  let wake = (): void => {}
  const ready = new Promise<void>((resolve) => {
    wake = resolve
  })
  const end = (outcome: Outcome): void => {
    if (!isReady) early = outcome
    isReady = true
    wake()
    settle?.(outcome)
    settle = undefined
  }
  worker.on('message', (message: FromPartThread) => {
    if (message.kind === 'frames') onFrames(message.frames)
    else if (message.kind === 'made') end('made')
    else if (message.kind === 'failed') end({ problems: message.problems })
    else {
      isReady = true
      wake()
    }
  })
  worker.on('error', (error) =>
    end({ died: error instanceof Error ? error.message : String(error) }),
  )
  worker.on('exit', (code) => end({ died: `it ended with ${code}` }))
  return {
    make: async (order: PartOrder): Promise<Outcome> => {
      await ready
      if (early) return early
      return new Promise((resolve) => {
        settle = resolve
        worker.postMessage({ kind: 'part', order } satisfies ToPartThread)
      })
    },
    stop: () => worker.terminate(),
  }
}

/**
 * Makes parts on `count` threads, each with the scan open for itself. A part whose thread dies is
 * made once more on another. Ends at the first part that cannot be made.
 */
export const makePartsOnThreads = async (
  names: TransferNames,
  orders: readonly PartOrder[],
  count: number,
  onFrames: (frames: number) => void,
): Promise<Result<undefined>> => {
  const left = [...orders]
  const problems: Problem[] = []
  const serve = async (): Promise<void> => {
    let thread = partThread(names, onFrames)
    let tries = 0
    for (let order = left.shift(); order && problems.length === 0; ) {
      const outcome = await thread.make(order)
      if (outcome !== 'made' && 'died' in outcome) {
        tries++
        await thread.stop()
        if (tries >= MOST_TRIES)
          problems.push(
            problem(
              'cannot-read',
              `Part ${order.part} of ${order.of} was stopped ${tries} times while it was made (${outcome.died}); look for lack of memory, then go on with --resume.`,
            ),
          )
        else thread = partThread(names, onFrames)
        continue
      }
      if (outcome === 'made') {
        tries = 0
        order = left.shift()
      } else problems.push(...outcome.problems)
    }
    await thread.stop()
  }
  await Promise.all(Array.from({ length: Math.min(count, orders.length) }, serve))
  const [first, ...rest] = problems
  return first ? fail(first, ...rest) : ok(undefined)
}
