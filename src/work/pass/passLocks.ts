import { problem } from '../../core/base/problem.ts'
import { fail, type Result } from '../../core/base/result.ts'

export const reelLock = (key: string): string => `reelwright pass ${key}`

const outputLock = (name: string): string => `reelwright output ${name}`

const ifFree = async <Value>(
  name: string,
  busy: () => Value,
  work: () => Promise<Value>,
): Promise<Value> =>
  navigator.locks.request(name, { ifAvailable: true }, (lock) => (lock ? work() : busy()))

/** Runs a pass while no other page of this browser runs one of its reel or to its output. */
export const withPassLocks = <Value>(
  key: string,
  output: string,
  work: () => Promise<Result<Value>>,
): Promise<Result<Value>> =>
  ifFree<Result<Value>>(
    reelLock(key),
    () =>
      fail(
        problem(
          'conflict',
          'A pass of this reel is under way in another window; wait for it, or stop it there.',
        ),
      ),
    () =>
      ifFree<Result<Value>>(
        outputLock(output),
        () =>
          fail(
            problem(
              'conflict',
              `Another pass is writing to ${output}; wait for it, or write somewhere else.`,
              { file: output },
            ),
          ),
        work,
      ),
  )

/** Whether a pass of a reel is under way anywhere in this browser. */
export const isPassUnderWay = (key: string): Promise<boolean> =>
  ifFree(
    reelLock(key),
    () => true,
    async () => false,
  )
