import { problem } from '../core/base/problem.ts'
import { fail, type Result } from '../core/base/result.ts'
import type { MadePass, PassCalls, PassNews, PassOrder } from '../work/passCalls.ts'
import { createCaller } from '../work/rpc.ts'

/** A pass under way in a worker of its own. */
export type PassRunning = {
  /** Rejects with an AbortError where it was stopped. */
  readonly made: Promise<Result<MadePass>>
  readonly pause: (isPaused: boolean) => void
  readonly stop: () => void
}

const workerEnded = (): Result<never> =>
  fail(
    problem(
      'cannot-read',
      'What made the pass was ended by the browser, as where memory runs out; go on with the pass: what is written is kept.',
    ),
  )

const startPassWorker = (): Worker =>
  new Worker(new URL('./worker/passWorker.ts', import.meta.url), { type: 'module', name: 'pass' })

/**
 * Starts a pass. The worker holds a lock as long as it lives; where the page gets that lock before
 * the pass is made, the worker has ended. Once `made` is settled the worker is gone, and so are its
 * locks.
 */
export const startPass = (
  order: PassOrder,
  onNews: (news: PassNews) => void,
  start: () => Worker = startPassWorker,
): PassRunning => {
  const worker = start()
  const call = createCaller<PassCalls>(worker)
  const stop = new AbortController()
  const life = `reelwright pass worker ${crypto.randomUUID()}`
  let end = (): void => {}
  const ended = new Promise<Result<never>>((resolve) => {
    end = () => resolve(workerEnded())
  })
  worker.addEventListener('error', () => end())
  let isHeld: Promise<void> = Promise.resolve()
  const run = async (): Promise<Result<MadePass>> => {
    await call('hold', life, { signal: stop.signal })
    isHeld = navigator.locks.request(life, () => end())
    return call('make', order, { onProgress: onNews, signal: stop.signal })
  }
  const made = Promise.race([run(), ended]).finally(async () => {
    worker.terminate()
    await isHeld
  })
  return {
    made,
    pause: (isPaused) => void call('pause', isPaused).catch(() => {}),
    stop: () => stop.abort(),
  }
}
