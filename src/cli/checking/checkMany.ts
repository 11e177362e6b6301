import { createReadStream } from 'node:fs'
import { createInterface } from 'node:readline'
import { problem } from '../../core/base/problem.ts'
import { fail, ok, type Result } from '../../core/base/result.ts'
import type { Kernel } from '../../kernel/kernel.ts'
import { MediaError } from '../../media/mediaError.ts'
import { EXIT, type ExitStatus, exitStatusOf } from '../exitStatus.ts'
import { problemText, type Terminal } from '../terminal.ts'
import { checkTasks } from './checkTask.ts'
import { checkedJson, checkedLine } from './checkWords.ts'
import { type Checked, type CheckWish, measureTask } from './measureTask.ts'

/** The lines of a file, or of standard input for `-`, as they come; empty ones are left out. */
async function* linesOf(path: string): AsyncGenerator<string> {
  const input = path === '-' ? process.stdin : createReadStream(path)
  try {
    for await (const line of createInterface({ input, crlfDelay: Number.POSITIVE_INFINITY }))
      if (line.trim() !== '') yield line.trim()
  } catch (error) {
    const says = error instanceof Error ? error.message : String(error)
    throw new MediaError(
      problem('cannot-read', `The list ${path} cannot be read: ${says}.`, { file: path }),
    )
  }
}

/** What is to be checked: as named, then as listed in a file. */
export async function* pathsOf(
  named: readonly string[],
  list: string | undefined,
): AsyncGenerator<string> {
  yield* named
  if (list !== undefined) yield* linesOf(list)
}

/** The answers of the reels of one path, as they come; what fails is an answer too. */
async function* answersOf(
  path: string,
  wish: CheckWish,
  kernel: () => Promise<Result<Kernel>>,
  terminal: Terminal,
): AsyncGenerator<Result<Checked>> {
  try {
    const tasks = await checkTasks(path, undefined)
    if (!tasks.ok) yield tasks
    else for (const task of tasks.value) yield await measureTask(task, wish, kernel, terminal)
  } catch (error) {
    if (!(error instanceof MediaError)) throw error
    yield fail(error.problem)
  }
}

const worse = (a: ExitStatus, b: ExitStatus): ExitStatus => (a > b ? a : b)

/**
 * Measures jobs and scans one after another and tells of each reel in a line as soon as it is
 * known; one that fails is told and the others go on. Only one reel is held at a time. Returns the
 * worst exit status.
 */
export const checkMany = async (
  paths: AsyncIterable<string>,
  wish: CheckWish,
  kernel: () => Promise<Result<Kernel>>,
  isJson: boolean,
  terminal: Terminal,
): Promise<Result<ExitStatus>> => {
  let worst: ExitStatus = EXIT.fine
  const counts = { inside: 0, outside: 0, failed: 0 }
  for await (const path of paths)
    for await (const answer of answersOf(path, wish, kernel, terminal)) {
      if (!answer.ok) {
        counts.failed++
        worst = worse(worst, exitStatusOf(answer.problems))
        if (isJson) terminal.json({ file: path, problems: answer.problems })
        else terminal.print(`FAILED  ${path}  ${answer.problems.map(problemText).join('  ')}`)
        continue
      }
      const { isInside, task } = answer.value
      counts[isInside ? 'inside' : 'outside']++
      if (!isInside) worst = worse(worst, EXIT.outside)
      if (isJson) terminal.json({ ...checkedJson(answer.value), reel: task.reel })
      else terminal.print(checkedLine(answer.value))
    }
  const { inside, outside, failed } = counts
  terminal.note(
    `${inside + outside + failed} checked: ${inside} inside, ${outside} outside, ${failed} could not be measured.`,
  )
  return ok(worst)
}
