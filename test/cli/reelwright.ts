import { execFile } from 'node:child_process'
import { join, resolve } from 'node:path'

export const ROOT = resolve(import.meta.dirname, '../..')

/** The built command line. */
export const MAIN = join(ROOT, 'dist/cli/main.js')

export type Outcome = { readonly status: number; readonly out: string; readonly error: string }

/** Runs the built command line to its end. */
export const reelwright = (
  args: readonly string[],
  env: NodeJS.ProcessEnv = {},
): Promise<Outcome> =>
  new Promise((done) => {
    execFile(
      process.execPath,
      [MAIN, ...args],
      { env: { ...process.env, ...env }, encoding: 'utf8', maxBuffer: 1 << 26 },
      (failure, out, error) => {
        const status = failure ? Number(failure.code ?? 1) : 0
        done({ status, out, error })
      },
    )
  })
