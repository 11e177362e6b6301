import { spawn } from 'node:child_process'

export type ProgramOutput = {
  readonly status: number | undefined
  readonly out: string
  readonly error: string
}

/** Runs a program to its end, without a shell. `status` is undefined where it is not there. */
export const runProgram = (command: string, args: readonly string[]): Promise<ProgramOutput> =>
  new Promise((resolve) => {
    const child = spawn(command, args, { stdio: ['ignore', 'pipe', 'pipe'] })
    let out = ''
    let error = ''
    child.stdout.setEncoding('utf8').on('data', (text: string) => {
      out += text
    })
    child.stderr.setEncoding('utf8').on('data', (text: string) => {
      error += text
    })
    child.once('error', () => resolve({ status: undefined, out, error }))
    child.once('close', (status) => resolve({ status: status ?? 1, out, error }))
  })
