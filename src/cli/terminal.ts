import type { Problem } from '../core/base/problem.ts'
import type { Pace } from '../work/pace.ts'

/** Where a command writes: results to standard output, everything else to standard error. */
export type Terminal = {
  readonly print: (text: string) => void
  readonly json: (value: unknown) => void
  readonly problems: (problems: readonly Problem[]) => void
  readonly note: (text: string) => void
  /** A line that writes over itself, on a terminal only; nothing where output is caught. */
  readonly pace: (words: string, pace: Pace) => void
  readonly clearPace: () => void
}

const placeText = ({ at }: Problem): string => {
  if (!at) return ''
  const parts = [
    at.file,
    at.line === undefined ? undefined : `line ${at.line}`,
    at.column === undefined ? undefined : `column ${at.column}`,
    at.byte === undefined ? undefined : `byte ${at.byte}`,
    at.field,
    at.frame === undefined ? undefined : `frame ${at.frame}`,
  ].filter((part) => part !== undefined)
  return parts.length > 0 ? ` (${parts.join(', ')})` : ''
}

/** What a problem says and where it is. */
export const problemText = (problem: Problem): string => `${problem.says}${placeText(problem)}`

// biome-ignore lint/suspicious/noControlCharactersInRegex: these are the characters meant
const CONTROLS = /[\u0000-\u0008\u000b-\u001f\u007f-\u009f]/gu

/** Words of a file on their way to a terminal: without what a terminal would obey. */
const harmless = (text: string): string => text.replace(CONTROLS, '\ufffd')

export const processTerminal = (): Terminal => {
  const { stdout, stderr } = process
  const clearPace = () => {
    if (stderr.isTTY) stderr.write('\r\u001b[K')
  }
  return {
    print: (text) => void stdout.write(`${harmless(text)}\n`),
    json: (value) => void stdout.write(`${JSON.stringify(value)}\n`),
    problems: (problems) => {
      clearPace()
      for (const problem of problems) stderr.write(`${harmless(problemText(problem))}\n`)
    },
    note: (text) => {
      clearPace()
      stderr.write(`${harmless(text)}\n`)
    },
    pace: (words, { done, total, framesPerSecond, secondsLeft }) => {
      if (!stderr.isTTY) return
      const left = secondsLeft === undefined ? '' : `, ${Math.ceil(secondsLeft)} s left`
      const percent = Math.round((100 * done) / Math.max(1, total))
      stderr.write(
        `\r\u001b[K${words} ${percent} %, ${Math.round(framesPerSecond)} frames/s${left}`,
      )
    },
    clearPace,
  }
}
