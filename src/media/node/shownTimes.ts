/** What ffmpeg tells of the pictures it is about to hand out, and of what went wrong. */
export type ShownTimes = {
  readonly add: (text: string) => void
  /** Time of the picture `index` (from 0) in the stream's units; undefined where none was told. */
  readonly timeOf: (index: number) => Promise<number | undefined>
  /** Nothing more will be told. */
  readonly end: () => void
  /** The last error told, without its mark; '' where there was none. */
  readonly lastError: () => string
}

const TIME = /\bn: *\d+ pts: *(-?\d+|NOPTS)\b/u

/** Lines that tell of no error; those without a mark are of a program in ffmpeg's place. */
const UNTROUBLED = /\[(?:info|warning|verbose|debug)\]/u

/** The lines of ffmpeg at `-v level+info` with the filter `showinfo`, as they come. */
export const readShownTimes = (): ShownTimes => {
  const times: (number | undefined)[] = []
  const waiting: (() => void)[] = []
  let isEnded = false
  let rest = ''
  let error = ''
  const wake = (): void => {
    for (const resolve of waiting.splice(0)) resolve()
  }
  const take = (line: string): void => {
    const time = TIME.exec(line)?.[1]
    if (time !== undefined) times.push(time === 'NOPTS' ? undefined : Number(time))
    else if (/\[(?:error|fatal)\]/u.test(line)) error = line.replace(/^.*\[(?:error|fatal)\] /u, '')
    else if (line !== '' && !UNTROUBLED.test(line)) error = line
  }
  return {
    add: (text) => {
      const lines = (rest + text).split('\n')
      rest = (lines.pop() ?? '').slice(-10_000)
      for (const line of lines) take(line)
      wake()
    },
    timeOf: async (index) => {
      while (index >= times.length && !isEnded)
        await new Promise<void>((resolve) => waiting.push(resolve))
      return times[index]
    },
    end: () => {
      isEnded = true
      take(rest)
      wake()
    },
    lastError: () => error,
  }
}
