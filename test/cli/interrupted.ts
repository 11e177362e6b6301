import { spawn } from 'node:child_process'
import { existsSync, readdirSync, rmSync } from 'node:fs'
import { setTimeout as wait } from 'node:timers/promises'
import { MAIN } from './reelwright.ts'

const MOST_TRIES = 20

/**
 * Runs the command line and kills it once `isHalfWay` holds, as a fault of power or an operator
 * would. Where it came to its end before, `finished` is taken away and it is begun anew.
 */
export const killedHalfWay = async (
  args: readonly string[],
  isHalfWay: () => boolean,
  finished: string,
): Promise<void> => {
  for (let tries = 0; tries < MOST_TRIES; tries++) {
    const child = spawn(process.execPath, [MAIN, ...args], { stdio: 'ignore' })
    const ended = new Promise<NodeJS.Signals | null>((resolve) => {
      child.once('exit', (_, signal) => resolve(signal))
    })
    while (child.exitCode === null && !isHalfWay()) await wait(1)
    child.kill('SIGKILL')
    if ((await ended) === 'SIGKILL' && !existsSync(finished)) return
    rmSync(finished, { recursive: true, force: true })
  }
  throw new Error(`It came to its end ${MOST_TRIES} times before it could be killed.`)
}

/** Whether some folder under `folder` whose name holds `name` has at least `count` files. */
export const hasFiles = (folder: string, name: string, count: number): boolean => {
  try {
    return (
      readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((path) =>
        path.includes(name),
      ).length > count
    )
  } catch {
    return false
  }
}
