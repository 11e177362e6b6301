import type { Problem } from '../../base/problem.ts'

/** Problems kept of one file; those past it are counted. */
const MOST_TOLD = 100

/** Gathers problems, a bounded number of them; the last then says how many more there are. */
export const createTeller = () => {
  const told: Problem[] = []
  let more: { first: Problem; count: number } | undefined
  return {
    tell: (each: Problem): void => {
      if (told.length < MOST_TOLD) told.push(each)
      else if (more) more.count++
      else more = { first: each, count: 1 }
    },
    all: (): readonly Problem[] => {
      if (!more) return told
      const { first, count } = more
      const says = count === 1 ? first.says : `${first.says} And so on: ${count} in all.`
      return [...told, { ...first, says }]
    },
  }
}
